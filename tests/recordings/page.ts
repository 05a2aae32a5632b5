/** The table of docs/recordings.md, from what was judged. */
import { grid } from '../../src/docs/markdown.ts';
import type { Judged } from './judge.ts';

export const [START, END] = ['<!-- forms -->', '<!-- end of forms -->'];

/** Values that a difference is rounded up to [%], so that the last digits of an exponential leave the page as it is. */
const STEPS = [0.2, 0.5, 1, 2];

const ceiling = (share: number): string => {
  const step = STEPS.find((limit) => Math.abs(share) * 100 <= limit);
  return step === undefined ? 'more than 2' : `≤ ${step}`;
};

/** `--scale 100mV/A --interval 10us` */
const options = ({ column, timeColumn, scale, interval }: NonNullable<Judged['form']['asked']>): string =>
  [
    ...(column ? [`--column ${column}`] : []),
    ...(timeColumn ? [`--time-column ${timeColumn}`] : []),
    ...(scale ? [`--scale ${scale.replace(' ', '')}`] : []),
    ...(interval ? [`--interval ${interval * 1e6}us`] : []),
  ].join(' ');

export function table(all: readonly Judged[]): string {
  return grid(
    ['form', 'options', 'peak [%]', 'dwell [%]', 'inductance [%]', 'resistance [%]', 'or'],
    all.map(({ form, why, contrary, off }) => [
      form.name,
      options(form.asked ?? {}) === '' ? '' : `\`${options(form.asked ?? {})}\``,
      ...(why !== null || contrary.length > 0
        ? ['', '', '', '']
        : [
            form.clipped ? 'cut off' : ceiling(off.peak),
            ceiling(off.dwell),
            ceiling(off.inductance),
            ceiling(off.resistance),
          ]),
      why === null ? contrary.map((text) => `first of all: ${text}`).join(' ') : `refused: ${why}`,
    ]),
  );
}
