/** What to measure on an install, and what is acceptable. */
import type { Evaluation } from '../../engine/evaluate.ts';
import { cardRows } from '../../readings/card.ts';
import type { CardLine } from '../protocol.ts';

export const testCardOf = (e: Evaluation): CardLine[] =>
  cardRows(e).map(({ of, subject, point, probes, instrument, low, high, unit }) => {
    const { what, wire, coil, between } = of;
    const { wires, coils } = e.design;
    // A temperature says nothing without that of the air: its form takes both.
    const entered = !between && what !== 'temperature';
    return {
      where: what === 'supply' || what === 'resting' ? subject : `${what}, ${subject}`,
      point,
      // A pole stays with its coil.
      probes: probes.replace(/ (?=[+−])/g, '\u00a0'),
      instrument,
      low,
      high,
      unit,
      entry: entered
        ? {
            what,
            ...(wire === null ? {} : { run: wires[wire]?.id ?? '' }),
            ...(coil === null ? {} : { coil: coils[coil]?.id ?? '' }),
            ...(point === '' ? {} : { point }),
          }
        : null,
      key: of.instrument,
      takes: of.shown,
    };
  });
