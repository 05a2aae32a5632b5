/**
 * The two time-current relations, as pieces of formulas: they are needed for chosen conductors, for candidates and for
 * every step of a curve, and must be the same everywhere.
 */

/**
 * Longest time after which the fuse of the run opens at `current`, from the gates: straight in log–log between them,
 * without end up to the first gate that has a maximum, and never shorter than that of the last one.
 * `open` says whether at that first gate itself the time is still without end.
 */
export const opening = (current: string, times: string, open: '<' | '<=' = '<='): string => {
  const at = (what: string, row: string): string => `INDEX(${what}, 1, ${row})`;
  const amps = 'gate_current[gate]';
  const row = `MATCH(${current}, ${amps}, 1)`;
  const last = `COUNT(${amps})`;
  const slope = `LN(${at(times, `${row}+1`)}/${at(times, row)})/LN(${at(amps, `${row}+1`)}/${at(amps, row)})`;
  return (
    `IF(${current}${open}${at(amps, '2')}, for_ever, IF(${current}>=${at(amps, last)}, ${at(times, last)}, ` +
    `${at(times, row)}*(${current}/${at(amps, row)})^(${slope})))`
  );
};

/** What the heating of a conductor needs, by name: ampacity, temperature under load, time constant. */
export interface Heated {
  readonly amps: string;
  readonly load_T: string;
  readonly theta: string;
}

/** Time until a conductor that carries `current` reaches `limit`: one time constant, resistance at its rating. */
const heating = (current: string, limit: string, { amps, load_T, theta }: Heated): string => {
  const rise = `(rating-run_ambient)*(${current}/${amps})^2`;
  return (
    `IF(${rise}>${limit}-run_ambient, IF(${limit}>${load_T}, ` +
    `-${theta}*LN(1-(${limit}-${load_T})/(${rise}-(${load_T}-run_ambient))), 0), for_ever)`
  );
};

/** Time for which a conductor endures `current`: up to 5 s the short-circuit limit counts, beyond it the overload limit. */
export const enduring = (current: string, heated: Heated): string =>
  `IF(${heated.amps}>0, MIN(${heating(current, 'short_limit', heated)}, ` +
  `MAX(open_limit, ${heating(current, 'overload_limit', heated)})), 0)`;

/** Heat capacity of one metre over the heat that leaves it per kelvin. */
export const timeConstant = (area: string, amps: string, ohm: string): string =>
  `copper_heat*${area}*(rating-run_ambient)/(${amps}^2*${ohm}*(1+alpha_20*(rating-T_ref)))`;
