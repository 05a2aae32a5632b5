/** The strip below the time-current curves: what faults draw, and where the fuse may be too slow. */
import { printNumber } from '../basis/print.ts';
import { type Look, note, type Panel, type Part } from './chart.ts';
import { drawnIn, type FuseCurves, rangesOf, type Withstands } from './curve-lines.ts';
import { NAMES } from './names.ts';
import { shortened } from './words.ts';

/** Height of a line of text and space around a row [px], and half a bar as a share of a row. */
const TEXT = 15;
const SPACE = 6;
const BAR = 0.3;

/** A row for a driver that stays on, and one for each run. */
export function faultPanel({ conductors, stuck }: FuseCurves): Panel {
  const first = stuck === null ? 0 : 1;
  const count = first + conductors.length;
  // Rows count from the top.
  const place = (row: number): number => count - 0.5 - row;
  const texts = conductors.map(textsOf);
  const height = TEXT * Math.max(1.5, ...texts.map(({ length }) => length)) + SPACE;
  const windows = conductors.some((one) => one.windows.length > 0);
  return {
    title:
      'Currents of a fault: a short anywhere along the run.' +
      (windows ? ' Boxes: the fuse may be too slow; hatched where a fault draws that.' : ''),
    height: height * count,
    y: { label: '', unit: '', from: 0, to: count },
    parts: [
      ...(stuck === null
        ? []
        : [
            { kind: 'marks', points: [{ x: stuck, y: place(0) }], look: 'plain', style: 3 } as const,
            note(place(0), `${NAMES.stuck} ${printNumber(stuck)} A`),
          ]),
      ...conductors.flatMap((one, i) => barsOf(one, stuck, place(first + i))),
      ...texts.flatMap((own, i) =>
        own.map(([text, look], k) =>
          note(place(first + i) - ((k - (own.length - 1) / 2) * TEXT) / height, text, look),
        ),
      ),
    ],
  };
}

function barsOf(one: Withstands, stuck: number | null, y: number): Part[] {
  const box = (x: number, x2: number) => ({ kind: 'box', x, x2, y: y - BAR, y2: y + BAR }) as const;
  return [
    ...drawnIn(one, stuck).map(([from, to]): Part => ({ ...box(from, to), fill: 'hatch' })),
    ...one.windows.map(
      ({ from, to, stuck: byDriver, short }): Part => ({
        ...box(from, to),
        fill: 'none',
        edge: byDriver || short ? 'limit' : 'quiet',
      }),
    ),
    { kind: 'ends', points: one.fault.map((x) => ({ x, y })), look: 'plain' },
  ];
}

/** What a short draws, and the windows with what draws their currents. */
function textsOf(one: Withstands): (readonly [string, Look])[] {
  const { name, fault, windows } = one;
  const open = windows.filter(({ stuck, short }) => stuck || short);
  const idle = windows.filter((window) => !open.includes(window));
  const causes = [
    ...(open.some(({ stuck }) => stuck) ? [NAMES.stuck] : []),
    ...(open.some(({ short }) => short) ? ['short'] : []),
  ];
  return [
    [`${shortened(name, 26)}: ${printNumber(fault[0])} to ${printNumber(fault[1])} A`, 'plain'],
    ...(open.length > 0
      ? [[`not protected at ${rangesOf(open)}: ${causes.join(', ')}`, 'limit'] as const]
      : []),
    ...(idle.length > 0 ? [[`too slow at ${rangesOf(idle)}, no fault there`, 'plain'] as const] : []),
  ];
}
