/** The currents in time as JSON: SI numbers, the unit as the last part of a key, null for what is not known. */
import type { Pair, Trace } from '../transient/trace.ts';

export const TRACE_FORMAT = 'coilfeed-trace/1';

interface JsonPair {
  readonly exact: number;
  readonly closed: number | null;
}

const pair = ({ exact, closed }: Pair): JsonPair => ({ exact, closed });

/** The numbers of a trace as a plain object; `wires` are the conductors to show, by index. */
export function traceJson(trace: Trace, wires: readonly number[]) {
  const { evaluation: e, point, circuit } = trace;
  return {
    format: TRACE_FORMAT,
    title: e.design.title,
    point: e.design.points[point]?.name ?? null,
    rpm: e.number('speed', { speed: point }),
    supply_V: circuit.supply,
    dwell_s: circuit.dwell,
    clipped: e.number('clipped', { speed: point }) === 1,
    cycle_s: circuit.cycle,
    runs: wires.flatMap((wire) => {
      const found = trace.wires[wire];
      return found
        ? [
            {
              id: e.design.wires[wire]?.id ?? '',
              resistance_ohm: circuit.wires[wire]?.ohm ?? null,
              average_A: pair(found.average),
              rms_A: pair(found.effective),
              peak_A: pair(found.peak),
            },
          ]
        : [];
    }),
    coils: trace.coils.map(({ coil, supplyAtFiring, lowestSupply, peak, energy }) => ({
      id: e.design.coils[coil]?.id ?? '',
      supply_at_firing_V: supplyAtFiring === null ? null : pair(supplyAtFiring),
      lowest_supply_V: lowestSupply,
      peak_A: pair(peak),
      energy_J: pair(energy),
    })),
  };
}
