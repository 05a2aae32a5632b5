/**
 * The two time-current relations, as pieces of formulas: they are needed for chosen conductors, for candidates and for
 * every step of a curve, and must be the same everywhere.
 */

/** A fuse by its gates: currents, times, and the slopes between them. */
export interface Gates {
  readonly currents: string;
  readonly times: string;
  readonly slopes: string;
}
const CURRENTS = 'gate_current[gate]';
/** The fuse that protects the run at hand, at its slowest and at its fastest. */
const SLOWEST: Gates = { currents: CURRENTS, times: 'gate_slowest[gate]', slopes: 'slowest_slope[gate]' };
export const FASTEST: Gates = {
  currents: CURRENTS,
  times: 'gate_fastest[gate]',
  slopes: 'fastest_slope[gate]',
};
/** The fuse that protects the conductor at hand, at its slowest. */
export const GUARD: Gates = {
  currents: 'gate_current[run guard,gate]',
  times: 'gate_slowest[run guard,gate]',
  slopes: 'slowest_slope[run guard,gate]',
};

/** Gate at or below a current, 0 below the first: what `opening` needs to know of the current. */
export const gateBelow = (current: string, { currents }: Gates = SLOWEST): string =>
  `IF(${current}<INDEX(${currents}, 1, 1), 0, MATCH(${current}, ${currents}, 1))`;

/** Time read from the limits at `current`, straight in log–log beyond the limit `row`; by I²t beyond the last one. */
export const atGate = (current: string, row: string, { currents, times, slopes }: Gates): string =>
  `INDEX(${times}, 1, ${row})*(${current}/INDEX(${currents}, 1, ${row}))^INDEX(${slopes}, 1, ${row})`;

/**
 * Longest time after which the fuse opens at `current`, `row` being the gate at or below it. Up to the first gate that
 * has a maximum, the second one, it is without end; `open` says whether at that gate itself it still is.
 */
export const opening = (
  current: string,
  row: string,
  open: '<' | '<=' = '<=',
  gates: Gates = SLOWEST,
): string => `IF(${current}${open}INDEX(${gates.currents}, 1, 2), for_ever, ${atGate(current, row, gates)})`;

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
    `-${theta}*LN(1-(${limit}-${load_T})/(${rise}-(${load_T}-run_ambient))), 0), for_ever)`
  );
};

/** Time for which a conductor withstands `current`: up to 5 s the short-circuit limit counts, beyond it the overload limit. */
export const withstanding = (current: string, heated: Heated): string =>
  `IF(${heated.amps}>0, MIN(${heating(current, 'short_limit', heated)}, ` +
  `MAX(open_limit, ${heating(current, 'overload_limit', heated)})), 0)`;

/** Heat capacity of one metre over the heat that leaves it per kelvin. */
export const timeConstant = (area: string, amps: string, ohm: string): string =>
  `copper_heat*${area}*(rating-run_ambient)/(${amps}^2*${ohm}*(1+alpha_20*(rating-T_ref)))`;
