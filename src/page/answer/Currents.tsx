/** Currents, drops and temperatures of every run, and what the worst coil is left with. */
import type { View } from '../protocol.ts';
import { useBenchState } from '../state/use.ts';
import { show } from '../units.ts';
import { atWorst, worstCoil, worstWires } from './facts.ts';
import { type Column, Table } from './Table.tsx';

const numbers = (...titles: string[]): Column[] => titles.map((title) => ({ title, number: true }));

export function Currents({ view: { json } }: { readonly view: View }) {
  const { system } = useBenchState();
  const rows = worstWires(json).map((wire) => {
    const at = atWorst(wire);
    return {
      key: wire.id,
      cells: [
        wire.run,
        at?.name ?? '–',
        show(at?.average_A ?? null, 'A', system),
        show(at?.rms_A ?? null, 'A', system),
        show(at?.peak_A ?? null, 'A', system),
        show(wire.ampacity_A, 'A', system),
        show(at?.drop_average_V ?? null, 'V', system, 'mV'),
        show(at?.drop_peak_V ?? null, 'V', system, 'mV'),
        show(wire.conductor_C, 'degC', system),
      ],
    };
  });
  return (
    <Table
      caption="Currents at the worst point of each run; drops as a meter (average) and a scope (peak) show them"
      columns={[
        { title: 'Run' },
        { title: 'at' },
        ...numbers('average', 'effective', 'peak', 'ampacity', 'meter', 'scope', 'at most'),
      ]}
      rows={rows}
    />
  );
}

export function WorstCoil({ view: { json } }: { readonly view: View }) {
  const { system } = useBenchState();
  const coil = worstCoil(json);
  const rows = (coil?.points ?? []).map((at, i) => ({
    key: at.name,
    cells: [
      at.name,
      show(json.points[i]?.rpm ?? null, 'rpm', system, 'rpm'),
      show(at.supply_V, 'V', system),
      show(at.peak_A, 'A', system),
      show(at.energy_J, 'J', system),
      show(at.energy_kept, '1', system, '%'),
      show(json.points[i]?.dwell_s ?? null, 's', system),
      show(at.dwell_to_win_back_s, 's', system),
    ],
  }));
  return (
    <Table
      caption={`Worst coil behind this feed: coil ${coil?.id ?? '–'}`}
      columns={[
        { title: 'Point' },
        ...numbers('speed', 'supply', 'peak', 'energy', 'kept', 'dwell', 'dwell to win back'),
      ]}
      rows={rows}
    />
  );
}
