/** A spread as a picture: what matters most, as bars for each figure. */

import type { Spread, Told } from '../spread/spread.ts';
import { printQuantity } from '../views/print.ts';
import { note, type Panel, type Part, type Picture } from './chart.ts';
import { shortened } from './words.ts';

/** Height of a bar’s row, and half the bar as a part of it [px]. */
const ROW = 24;
const BAR = 0.3;
const MOST_BARS = 8;
const SMALL = 0.005;

/** A picture of each figure that varies. */
export function sharesPicture({ design, figures, samples }: Spread): Picture {
  const panels = figures.flatMap((told): Panel[] => {
    const bars = told.shares.filter(({ share }) => share >= SMALL).slice(0, MOST_BARS);
    return bars.length === 0 ? [] : [panelOf(told, bars, design.units === 'us' ? 'us' : 'metric')];
  });
  return {
    name: 'shares',
    title: design.title,
    subtitle: `What matters most: first-order shares of the variance over ${samples} installs`,
    description: figures
      .map(
        ({ figure, shares }) =>
          `${figure.label}: ${shares
            .slice(0, 3)
            .map(({ group, share }) => `${group} ${text(share)}`)
            .join(', ')}`,
      )
      .join('. '),
    stacks: [
      {
        title: 'Share of the variance',
        x: { label: 'Share of the variance', unit: '%', from: 0, to: 100 },
        panels,
      },
    ],
  };
}

const text = (share: number): string => `${(share * 100).toFixed(1)} %`;

function panelOf({ figure, low, high }: Told, bars: Told['shares'], units: 'us' | 'metric'): Panel {
  const say = (value: number | null): string =>
    value === null ? '–' : printQuantity(figure.as, value, units);
  const count = bars.length;
  return {
    title: `${figure.label}; 5 % to 95 % of all installs: ${say(low)} to ${say(high)}`,
    height: ROW * count,
    y: { label: '', unit: '', from: 0, to: count },
    parts: bars.flatMap(({ group, share }, i): Part[] => {
      const y = count - 0.5 - i;
      return [
        { kind: 'box', x: 0, x2: share * 100, y: y - BAR, y2: y + BAR, fill: 'tint', edge: 'plain' },
        note(y, `${shortened(group, 30)} ${text(share)}`),
      ];
    }),
  };
}
