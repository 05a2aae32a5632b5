/** A recording beside the design, as text for the terminal, as a table of the overlay, and as JSON. */
import { asRead, printValue } from '../basis/print.ts';
import type { Knee } from '../transient/measured/charge-fit.ts';
import type { Comparison } from '../transient/measured/compare.ts';
import type { Estimate } from '../transient/measured/estimate.ts';
import type { MeasuredTrace } from '../transient/measured/measure.ts';
import type { Trace } from '../transient/trace.ts';
import { columns, fold } from './columns.ts';
import { csv, fixed } from './csv.ts';

const WIDTH = 80;
const bullet = (text: string): string => fold(text, WIDTH, '    ').replace('    ', '  - ');

/** The report of a recording. */
export function measuredReport(trace: Trace, measured: MeasuredTrace, c: Comparison): string {
  const { evaluation: e, point, circuit } = trace;
  const coil = e.design.coils[c.coil]?.id ?? '';
  const head = [
    fold(e.design.title, WIDTH, ''),
    fold(
      `Recording of ${measured.samples} samples, ${counted(measured.charges.length, 'charge')} judged, beside coil ` +
        `${coil} at ${e.design.points[point]?.name} with ${printValue(circuit.supply, 'V')}`,
      WIDTH,
      '',
    ),
  ].join('\n');
  const row = (
    label: string,
    unit: string,
    found: number | null,
    within: number | null,
    says: number,
    shown?: string,
  ): string[] => [
    `${label} ${asRead(says, unit, shown)[1]}`,
    asRead(found, unit, shown)[0],
    within === null ? '' : `±${asRead(within, unit, shown)[0]}`,
    asRead(says, unit, shown)[0],
    found === null || says === 0 ? '–' : share(found / says - 1),
  ];
  const rows = [
    row('Peak', 'A', measured.peak, null, c.peak),
    row('Dwell', 's', measured.dwell, null, c.dwell),
    row(
      'Resistance of the loop',
      'ohm',
      measured.resistance.value,
      measured.resistance.within,
      c.resistance,
      'ohm',
    ),
    row('Inductance', 'H', measured.inductance.value, measured.inductance.within, c.inductance, 'mH'),
  ];
  const table = columns(
    ['', 'measured', '95 %', 'computed', 'off %'].map((title, i) => ({
      title,
      align: i === 0 ? 'left' : 'right',
    })),
    rows,
  );
  const first = c.contrary.length > 0 ? `\n\nFirst of all\n${c.contrary.map(bullet).join('\n')}` : '';
  const told = [
    c.spacing,
    kneeText(measured.knee),
    `The first charge and the computed one differ by ${printValue(c.overlay.apart, 'A')} (root mean square).`,
    ...doubts(measured, c),
    ...measured.notes,
  ];
  return `${head}${first}\n\nMeasured beside computed\n${table}\n\nWhat it shows\n${told.map(bullet).join('\n')}\n`;
}

const counted = (n: number, what: string): string => `${n} ${what}${n === 1 ? '' : 's'}`;

/** `+3.1` [%] */
const share = (value: number): string => {
  const text = Math.abs(value * 100).toFixed(1);
  return Number(text) === 0 ? '0' : `${value < 0 ? '−' : '+'}${text}`;
};

/** What the knee means. */
function kneeText(knee: Knee | null): string {
  if (knee === null) return 'No knee: the current rises to its end as that of a coil without limit does.';
  const where = `${printValue(knee.current, 'A')}, ${printValue(knee.after, 's')} after the start`;
  switch (knee.kind) {
    case 'limit':
      return `A limit: the current is held at ${where}.`;
    case 'clipped':
      return (
        `The end is flat and without noise from ${where}: most likely the range of clamp or instrument. The true peak is ` +
        'higher; resistance and inductance are taken from below.'
      );
    case 'saturation':
      return `The current bends upward from ${where}: the core saturates, and a longer dwell heats more than it stores.`;
  }
}

/** A range of confidence wider than this share of its value says nothing. Arbitrary. */
const USELESS = 0.5;

function doubts({ resistance }: MeasuredTrace, { overlapped }: Comparison): string[] {
  const wide = resistance.within > USELESS * Math.abs(resistance.value);
  return [
    ...(wide ? ['The charge is too short to tell the resistance: its curve hardly bends.'] : []),
    ...(overlapped
      ? [
          'Other coils charge at the same time at this point, and their drop shows in this current: a recording at low ' +
            'engine speed tells resistance and inductance better.',
        ]
      : []),
  ];
}

const TITLES = ['time since start of charge [ms]', 'measured [A]', 'computed [A]'];

/** The overlay of the first charge as a table. */
export const measuredCsv = ({ overlay }: Comparison): string =>
  csv([
    TITLES,
    ...overlay.points.map(({ after, measured, computed }) =>
      [after * 1e3, measured, computed].map((value) => fixed(value, 6)),
    ),
  ]);

export const MEASURED_FORMAT = 'coilfeed-measured/1';

/** The same as a plain object: SI numbers, the unit as the last part of a key, null for what is not known. */
export function measuredJson(trace: Trace, measured: MeasuredTrace, c: Comparison) {
  const { evaluation: e, point, circuit } = trace;
  const estimate = ({ value, within }: Estimate) => ({ value, within_95: within });
  return {
    format: MEASURED_FORMAT,
    title: e.design.title,
    point: e.design.points[point]?.name ?? null,
    supply_V: circuit.supply,
    coil: e.design.coils[c.coil]?.id ?? null,
    contrary: c.contrary,
    samples: measured.samples,
    time_unit: measured.unit,
    noise_A: measured.noise,
    measured: {
      peak_A: measured.peak,
      dwell_s: measured.dwell,
      resistance_ohm: estimate(measured.resistance),
      inductance_H: estimate(measured.inductance),
    },
    computed: {
      peak_A: c.peak,
      dwell_s: c.dwell,
      resistance_ohm: c.resistance,
      inductance_H: c.inductance,
    },
    apart_A: c.overlay.apart,
    spacing_s: measured.spacing,
    spacing: c.spacing,
    left_out: measured.leftOut,
    knee:
      measured.knee === null
        ? null
        : { kind: measured.knee.kind, current_A: measured.knee.current, after_s: measured.knee.after },
    charges: measured.charges.map(({ start, dwell, peak, knee }) => ({
      start_s: start,
      dwell_s: dwell,
      peak_A: peak,
      knee: knee?.kind ?? null,
    })),
    notes: measured.notes,
  };
}
