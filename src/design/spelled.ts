/**
 * Every spelling of a word that a cell of a workbook takes: one table for the formulas of the workbook and for what reads it
 * back, so that both take the same and refuse the rest. A design file takes more (`spellings.ts`).
 */
import {
  CLOSES,
  FUSE_TYPES,
  INSULATIONS,
  MATERIALS,
  SAE_TYPES,
  SERIES,
  SIZES,
  SUPPRESSIONS,
} from './names.ts';
import { readSize } from './spellings.ts';

export interface Spelled {
  /** As it is looked up, see `folded`. */
  readonly key: string;
  /** As the design holds it. */
  readonly word: string;
  /** Of a size: as a type that is sold by SAE number holds it. Of an insulation: 1 when it is such a type, else 0. */
  readonly sold: string | number;
}

/** Signs that make no difference; the formulas of the workbook take out the same ones. */
export const IGNORED = [' ', '\u00a0', '_', '-'] as const;

/** A text without what makes no difference, in small letters. */
export const folded = (text: string): string =>
  IGNORED.reduce((rest, sign) => rest.replaceAll(sign, ''), text)
    .replaceAll('²', '2')
    .toLowerCase();

const AROUND = {
  AWG: ['*awg', 'awg*', '*ga', 'ga*', '*ga.', 'ga.*', '*gauge', 'gauge*', '#*', '*#'],
  SAE: ['*sae', 'sae*'],
  mm2: ['*mm2', '*mm^2', '*sqmm', '*sq.mm', '*qmm'],
} as const;

/** `00` is another way to write 2/0, `2.50` and `2,5` of 2.5. */
function numbersOf(size: string): string[] {
  const noughts = /^([1-4])\/0$/.exec(size)?.[1];
  if (noughts !== undefined) return [size, '0'.repeat(Number(noughts))];
  if (!/^\d+(?:\.\d+)?$/.test(size)) return [size];
  const longer = size.includes('.') ? `${size}0` : `${size}.0`;
  return [size, size.replace('.', ','), longer, longer.replace('.', ',')];
}

const inSae = (size: string): string => {
  const [number, series] = size.split(' ');
  const sold = `${number} SAE`;
  return series === 'AWG' && readSize(sold) !== null ? sold : size;
};

const once = (all: readonly Spelled[]): Spelled[] => [...new Map(all.map((one) => [one.key, one])).values()];

const sizes: readonly Spelled[] = once(
  SERIES.flatMap((series) =>
    SIZES[series].flatMap((size) => {
      const word = `${size} ${series}`;
      const numbers = series === 'mm2' ? numbersOf(size) : numbersOf(size).filter((n) => !/[.,]/.test(n));
      return AROUND[series].flatMap((form) =>
        numbers.map((number) => ({ key: form.replace('*', number), word, sold: inSae(word) })),
      );
    }),
  ),
);

const plain = (words: readonly string[]): Spelled[] =>
  once(words.map((word) => ({ key: folded(word), word, sold: word })));

const AUTO = plain(['auto']);

export const LISTS = {
  auto: AUTO,
  size: sizes,
  sizeOrAuto: [...AUTO, ...sizes],
  insulation: INSULATIONS.map((word) => ({
    key: folded(word),
    word,
    sold: SAE_TYPES.includes(word) ? 1 : 0,
  })),
  fuseType: plain(FUSE_TYPES),
  series: plain(SERIES),
  material: plain(MATERIALS),
  suppression: plain(SUPPRESSIONS),
  closes: plain(CLOSES),
} as const satisfies Readonly<Record<string, readonly Spelled[]>>;

export type List = keyof typeof LISTS;

/** List of the words of an input, by the last step of its path; null for one that takes numbers only. */
export const listOf = (path: string): List | null => BY_STEP[path.split('.').at(-1) ?? ''] ?? null;

const BY_STEP: Readonly<Record<string, List>> = {
  gauge: 'sizeOrAuto',
  smallest: 'size',
  largest: 'size',
  insulation: 'insulation',
  type: 'fuseType',
  series: 'series',
  material: 'material',
  suppression: 'suppression',
  closes: 'closes',
  rating: 'auto',
};

/** The word that a spelling stands for; null when the list has no such one. */
export const wordFor = (list: List, text: string): string | null => {
  const key = folded(text);
  return LISTS[list].find((one) => one.key === key)?.word ?? null;
};
