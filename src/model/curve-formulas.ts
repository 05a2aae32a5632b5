/**
 * The two time-current relations, as pieces of formulas: they are needed for chosen conductors, for candidates and for
 * every step of a curve, and must be the same everywhere.
 */

/** A fuse by its opening-time limits: currents, times, and the slopes between them. */
export interface Limits {
  readonly currents: string;
  readonly times: string;
  readonly slopes: string;
}
const CURRENTS = 'opening_current[opening]';
/** The fuse that protects the run at hand, at its slowest and at its fastest. */
const SLOWEST: Limits = {
  currents: CURRENTS,
  times: 'opening_slowest[opening]',
  slopes: 'slowest_slope[opening]',
};
export const FASTEST: Limits = {
  currents: CURRENTS,
  times: 'opening_fastest[opening]',
  slopes: 'fastest_slope[opening]',
};
/** The fuse that protects the conductor at hand, at its slowest. */
export const GUARD: Limits = {
  currents: 'opening_current[run guard,opening]',
  times: 'opening_slowest[run guard,opening]',
  slopes: 'slowest_slope[run guard,opening]',
};

/** Opening-time limit at or below a current, 0 below the first: what `opening` needs to know of the current. */
export const limitBelow = (current: string, { currents }: Limits = SLOWEST): string =>
  `IF(${current}<INDEX(${currents}, 1, 1), 0, MATCH(${current}, ${currents}, 1))`;

/** Time read from the limits at `current`, straight in log–log beyond the limit `row`; by I²t beyond the last one. */
export const atLimit = (current: string, row: string, { currents, times, slopes }: Limits): string =>
  `INDEX(${times}, 1, ${row})*(${current}/INDEX(${currents}, 1, ${row}))^INDEX(${slopes}, 1, ${row})`;

/**
 * Longest time after which the fuse opens at `current`, `row` being the limit at or below it. Up to the first limit that
 * has a maximum, the second one, it is without end; `open` says whether at that limit itself it still is.
 */
export const opening = (
  current: string,
  row: string,
  open: '<' | '<=' = '<=',
  limits: Limits = SLOWEST,
): string => `IF(${current}${open}INDEX(${limits.currents}, 1, 2), no_end, ${atLimit(current, row, limits)})`;

/** What the heating of a conductor needs, by name: ampacity, temperature under load, time constant. */
export interface Heated {
  readonly amps: string;
  readonly load_T: string;
  readonly theta: string;
}

/** The conductors of the run at hand, at the size taken. */
export const RUN: Heated = { amps: 'ampacity', load_T: 'load_T', theta: 'theta' };

/** All conductors of the run in parallel together. */
export const TOGETHER: Heated = { amps: 'amps_together', load_T: 'load_T', theta: 'theta' };

/**
 * Time until a conductor that carries `current` reaches `limit`: one time constant, resistance at its rating. A current that
 * ends at the limit but for `alike` never passes it: programs differ in the last digit of what stands on that edge.
 */
const heating = (current: string, limit: string, { amps, load_T, theta }: Heated): string => {
  const rise = `(rating-run_ambient)*(${current}/${amps})^2`;
  return (
    `IF(${rise}>(${limit}-run_ambient)*(1+alike), IF(${limit}>${load_T}, ` +
    `-${theta}*LN(1-(${limit}-${load_T})/(${rise}-(${load_T}-run_ambient))), 0), no_end)`
  );
};

/** Time for which a conductor withstands `current`: up to 5 s the short-circuit limit counts, beyond it the overload limit. */
export const withstanding = (current: string, heated: Heated): string =>
  `IF(${heated.amps}>0, MIN(${heating(current, 'short_limit', heated)}, ` +
  `MAX(open_limit, ${heating(current, 'overload_limit', heated)})), 0)`;

/** Heat capacity of one metre over the heat that leaves it per kelvin. */
export const timeConstant = (area: string, amps: string, ohm: string): string =>
  `copper_heat*${area}*(rating-run_ambient)/(${amps}^2*${ohm}*(1+alpha_20*(rating-T_ref)))`;
