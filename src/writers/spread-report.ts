/** A spread on the terminal. */

import type { Quantity } from '../basis/quantity.ts';
import { readIn } from '../basis/shown.ts';
import { WORDS } from '../findings/words.ts';
import { QUANTITIES } from '../model/model.ts';
import { EACH, type Input, nameOf } from '../spread/inputs.ts';
import type { Spread, Told } from '../spread/spread.ts';
import { bullet, columns, fold, WIDTH } from './columns.ts';

/** Shares that are told of each figure. */
const MOST_SHARES = 6;
/** Shares below this say nothing. */
const SMALL = 0.005;

export const percent = (share: number): string => {
  const value = share * 100;
  return value > 0 && value < 0.01 ? '< 0.01 %' : `${value.toFixed(value > 99 && value < 100 ? 2 : 1)} %`;
};

/** Ends with a line break. */
export function spreadReport(spread: Spread): string {
  const { design, samples, seed, passing, verdict, figures } = spread;
  const parts = [
    [
      design.title,
      `As designed it ${verdict === 'pass' ? 'passes' : verdict === 'fail' ? 'FAILS' : 'is not known whether it passes'}; of ${samples} installs ${percent(passing)} pass. Seed ${seed}.`,
    ].join('\n'),
    drawnText(spread),
    `How figures lie\n${columns(
      [
        { title: '' },
        ...['designed', 'median', '5 %', '95 %', 'least', 'most'].map((title) => ({
          title,
          align: 'right' as const,
        })),
      ],
      figures.map((told) => figureTexts(told, spread)),
    )}`,
    `What matters most: share of the variance, by input\n${sharesText(figures)}`,
    rulesText(spread),
    weakestText(spread),
  ];
  return `${parts.filter((part) => part !== '').join('\n\n')}\n`;
}

/** Its name with the unit, then its values without. */
function figureTexts(
  { figure, nominal, median, low, high, least, most }: Told,
  { design }: Spread,
): string[] {
  const { unit, shown }: Quantity = QUANTITIES[figure.as];
  const system = design.units === 'us' ? 'us' : 'metric';
  const texts = [nominal, median, low, high, least, most].map(
    (value) => readIn(value, unit, system, shown)[0],
  );
  return [`${figure.label}, ${readIn(0, unit, system, shown)[1]}`, ...texts];
}

/** What was drawn for a whole install, and what for each part by itself. */
function drawnText({ inputs, design }: Spread): string {
  const told = (own: readonly Input[]): string => {
    const kinds = new Map(own.map((input) => [input.kind, input]));
    return [...kinds.values()]
      .map(({ kind, width }) => {
        const kelvins = kind === 'ambient' || kind === 'coil_warmer';
        const by = kelvins ? `${width} K` : `${Number((width * 100).toPrecision(6))} %`;
        const shape = design.tolerance.distribution[kind] === 'normal' ? ', normal' : '';
        return `${nameOf(kind)} ${kind === 'coil_warmer' ? `up to ${by} more` : `± ${by}`}${shape}`;
      })
      .join('; ');
  };
  const each = inputs.filter(({ kind }) => EACH.includes(kind));
  const all = inputs.filter((input) => !each.includes(input));
  return [
    'What differs',
    ...(all.length > 0 ? [bullet(`for a whole install: ${told(all)}`)] : []),
    ...(each.length > 0 ? [bullet(`for each coil and each conductor by itself: ${told(each)}`)] : []),
    ...(inputs.length === 0 ? ['  nothing: all tolerances are 0'] : []),
  ].join('\n');
}

const sharesText = (figures: readonly Told[]): string =>
  figures
    .map(({ figure, shares }) => {
      const large = shares.filter(({ share }) => share >= SMALL).slice(0, MOST_SHARES);
      const told = large.map(({ group, share }) => `${group} ${percent(share)}`).join(', ');
      return bullet(`${figure.label}: ${told || 'it does not vary'}`);
    })
    .join('\n');

/** Rules that do not hold in all installs, the rarest first. */
function rulesText({ rules, samples }: Spread): string {
  const open = rules.filter(({ share }) => share < 1).sort((a, b) => a.share - b.share);
  if (open.length === 0) return `Every rule holds in all ${samples} installs.`;
  const rows = open.map(({ rule, advice, share }) => [
    WORDS[rule].title,
    percent(share),
    advice ? 'advice' : '',
  ]);
  return `Rules that do not hold in every install\n${columns([{ title: '' }, { title: 'holds in', align: 'right' }, { title: '' }], rows)}\n${fold(`${rules.length - open.length} more hold in all ${samples}`, WIDTH, '  ')}`;
}

function weakestText({ weakest }: Spread): string {
  const known = weakest.filter(({ share }) => share > 0).sort((a, b) => b.share - a.share);
  if (known.length === 0) return '';
  return fold(
    `The weakest coil: ${known.map(({ coil, share }) => `coil ${coil} in ${percent(share)}`).join(', ')}`,
    WIDTH,
    '',
  );
}
