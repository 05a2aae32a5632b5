/** The test card: what to measure, where, and what is acceptable, ready to print. */
import { asRead } from '../basis/print.ts';
import type { Design } from '../design/design.ts';
import type { Evaluation } from '../engine/evaluate.ts';
import { type Expected, expectedReadings, type Where } from './expected.ts';
import { instrumentWords, probesOf, subjectOf } from './places.ts';

/** A row of the card. Texts are printed as they stand; numbers behind them are in `of`. */
export interface CardRow {
  /** Name of the operating point; empty where nothing runs. */
  readonly point: string;
  /** Run, coil or battery. */
  readonly subject: string;
  readonly probes: string;
  readonly instrument: string;
  readonly expected: string;
  readonly low: string;
  readonly high: string;
  /** As it is printed, `mV`. */
  readonly unit: string;
  readonly of: Expected;
}

/**
 * Rows of the card. `short`: at each point the battery, every shared run, and of the runs with a conductor for each
 * coil the one that drops most; of the coils the one that is left with least. `full`: every conductor and every coil.
 * The evaluation must hold the subject `readings`.
 */
export function cardRows(e: Evaluation, which: 'short' | 'full' = 'short'): CardRow[] {
  const rows = expectedReadings(e).filter((row) => onCard(e.design, row));
  return rows.filter((row) => which === 'full' || onShortCard(e, row)).map((row) => printed(e.design, row));
}

/** Whether a card has this place: in a run with a conductor for each coil the current is that of the coil. */
export const onCard = ({ wires }: Design, { what, wire }: Where): boolean =>
  what !== 'current' || wire === null || wires.filter(({ run }) => run === wires[wire]?.run).length === 1;

function onShortCard(e: Evaluation, { wire, coil, what, point }: Expected): boolean {
  if (what === 'resistance') return false;
  if (wire === null && coil === null) return true;
  const worst = worstCoil(e, point ?? 0);
  if (wire === null) return coil === worst;
  const coils = e.design.wires[wire]?.coils ?? [];
  return coils.length > 1 || coils[0] === worst;
}

/** Index of the coil that is left with least at a point. */
function worstCoil(e: Evaluation, point: number): number {
  const supplies = e.design.coils.map((_, coil) => e.number('coil_supply', { coil, point }) ?? 0);
  return supplies.indexOf(Math.min(...supplies));
}

export function printed(design: Design, row: Expected): CardRow {
  const say = (value: number | null): string => asRead(value, row.unit, row.shown)[0];
  return {
    point: row.point === null ? '' : (design.points[row.point]?.name ?? ''),
    subject: subjectOf(design, row),
    probes: probesOf(design, row),
    instrument: instrumentWords(row),
    expected: say(row.expected),
    low: say(row.low),
    high: say(row.high),
    unit: asRead(row.expected, row.unit, row.shown)[1],
    of: row,
  };
}
