/** What a voltage at the coil of a relay says: too little to close or to hold when hot, or more lost on the way than stated. */
import { printValue } from '../basis/print.ts';
import type { Evaluation } from '../engine/evaluate.ts';
import type { Judged } from './judge.ts';
import type { Mend } from './mend.ts';

export function triggerMends(e: Evaluation, readings: readonly Judged[]): Mend[] {
  return readings.flatMap(({ reading, stands, expected }): Mend[] => {
    if (reading.what !== 'trigger' || reading.wire === null) return [];
    const { id, run } = e.design.wires[reading.wire] as Evaluation['design']['wires'][number];
    const point = e.design.points[reading.point ?? -1];
    const read = printValue(reading.value, 'V');
    const common = { subject: `relay of ${id}`, rule: null, cost: null };
    const closing = e.number('relay_pull_in', { run });
    const holding = e.number('relay_drop_out', { run });
    // A relay that closes with the key only has to hold while the starter turns.
    const closes = e.design.runs[run]?.relay?.closes === 'while cranking' || point?.name !== 'cranking';
    if (reading.instrument === 'meter' && closes && closing !== null && reading.value < closing)
      return [
        {
          ...common,
          harm: 'stop',
          says: 'The coil of this relay gets too little voltage: hot, the relay may not close.',
          detail: `${read} was read across its coil at ${point?.name}; hot it pulls in at ${printValue(closing, 'V')}. Read the battery posts at the same time: what differs is lost in the wire that triggers it, in its switch and in its ground.`,
        },
      ];
    if (holding !== null && reading.value < holding)
      return [
        {
          ...common,
          harm: 'stop',
          says: 'The coil of this relay gets too little voltage: the relay may drop out.',
          detail: `${read} was read across its coil at ${point?.name}; hot it drops out at ${printValue(holding, 'V')}.`,
        },
      ];
    if (stands === 'low')
      return [
        {
          ...common,
          harm: 'note',
          says: 'The wire that triggers this relay loses more voltage than it should.',
          detail: `${read} was read across its coil at ${point?.name}, where at least ${printValue(expected.low, 'V')} is expected. Read from the battery to each end of that wire, and its ground.`,
        },
      ];
    return [];
  });
}
