/** The test card: what to measure on the finished vehicle, where, and what is acceptable there. */
import type { At } from '../basis/quantity.ts';
import { printCitation } from '../basis/sources.ts';
import { DROP_TEST } from '../data/drop.ts';
import { SPREADS } from '../model/readings.ts';
import { escaped } from '../pictures/elements.ts';
import { type CardRow, cardRows } from '../readings/card.ts';
import { atPosts, quantityOf } from '../readings/expected.ts';
import { name, table } from './html.ts';
import type { Job } from './job.ts';
import { blank, kitValue, modelValue } from './values.ts';

const INTRO =
  '<p class="about">A multimeter shows the average, a scope the peak at the instant of a spark: the two differ several times over, so take the row of your instrument. A drop above its range means a poor joint, or a longer or thinner wire; a current outside of it another coil, supply or dwell. Keep probes and leads clear of belts, fan and high tension.</p>';

/** What counts as good on any feed, beside what is to be expected of this one. */
const GOOD = `<p class="about">On any feed, by a meter and under full load, these drops count as good at most: ${DROP_TEST.rows
  .map(({ part, drop }) => `${part} <span data-made="">${drop} V</span>`)
  .join(
    ', ',
  )} (${escaped(printCitation(DROP_TEST.source))}). The ranges below are those of this feed and tell more.</p>`;

/** A table for each operating point. The evaluation must hold the readings. */
export function testCard(job: Job): string {
  const { evaluation: e } = job.result;
  const rows = cardRows(e);
  return [
    INTRO,
    GOOD,
    ...e.design.points.flatMap((point, i) => {
      const own = rows.filter((row) => row.of.point === i);
      if (own.length === 0) return [];
      const title = `<h3>${name(point.name)}: ${modelValue(e, 'point_rpm', { point: i })}, ${modelValue(e, 'point_supply', { point: i })} at the battery posts</h3>`;
      return (
        title +
        table(
          ['At', 'Probes', 'Instrument', 'Expected', 'At least', 'At most', 'Measured'],
          own.map((row) => line(job, row)),
          [3, 4, 5],
        )
      );
    }),
  ].join('\n');
}

const line = (job: Job, row: CardRow): string[] => [
  name(row.subject),
  name(row.probes),
  escaped(row.instrument),
  expected(job, row),
  limit(job, row, 'low'),
  limit(job, row, 'high'),
  blank,
];

/** What is expected, as the quantity of the model that it is. */
function expected({ result: { evaluation: e } }: Job, { of }: CardRow): string {
  const quantity = atPosts(of) ? null : quantityOf(of);
  const at: At = {
    ...(of.wire === null ? {} : { wire: of.wire }),
    ...(of.coil === null ? {} : { coil: of.coil }),
    ...(of.point === null ? {} : { point: of.point }),
  };
  if (quantity === null) return modelValue(e, 'point_supply', at);
  return modelValue(e, quantity, { ...at, spread: SPREADS.indexOf('expected') });
}

/** An end of the range: tolerances and the error of the instrument together. */
const limit = (job: Job, { of }: CardRow, end: 'low' | 'high'): string =>
  kitValue(job, `test card: ${end}`, of[end], of);
