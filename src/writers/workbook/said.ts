/**
 * Sentences of findings with live numbers in them: texts joined with the figures that they name. Each figure is put into words
 * once, on a sheet of its own; numbers are rounded to three places and put together from whole ones, which all programs do alike.
 */
import { address } from '../../basis/address.ts';
import type { At, Quantity } from '../../basis/quantity.ts';
import type { Units } from '../../basis/shown.ts';
import { printUnit } from '../../basis/units.ts';
import { type Cell, put, type Sheet, turned } from '../../engine/cell.ts';
import type { Grid } from '../../engine/translate.ts';
import type { RuleId } from '../../findings/rules.ts';
import { WORDS } from '../../findings/words.ts';
import { QUANTITIES, type QuantityName } from '../../model/model.ts';
import { cellFor, unitOf } from './links.ts';
import { opening, words } from './page.ts';

export const SAID = 'Said';
const TOP = 4;
const COLUMN = { name: 0, value: 1, power: 2, whole: 3, text: 4 } as const;
/** A number that is so close to fewer places has no more of them. */
const ROUND = '1e-6';
/** Longest text within a formula [characters]. */
const LONGEST = 250;

/** Figures that sentences name, each once. */
export class Said {
  private readonly places = new Map<string, number>();
  private readonly cells: Sheet = [];
  private readonly grid: Grid;
  private readonly units: Units;

  constructor(grid: Grid, units: Units) {
    this.grid = grid;
    this.units = units;
    opening(this.cells, 'Figures in words', 'What the sentences on Findings name, rounded.');
    ['Figure', 'Value', 'Power of ten', 'Whole', 'In words'].forEach((value, i) => {
      put(this.cells, TOP - 1, i, { role: 'label', value });
    });
  }

  sheet(): Sheet {
    return this.cells;
  }

  /** Cell with the words of a quantity. */
  of(name: QuantityName, at: At): string {
    const q: Quantity = QUANTITIES[name];
    return this.cell(name, cellFor(this.grid, name, at), name, unitOf(name, this.units), q.exact === true);
  }

  /** Cell with the words of what stands in a cell, a value of this quantity, read in this unit. */
  cell(name: string, cell: string, of: QuantityName, unit: string, exact: boolean): string {
    const q: Quantity = QUANTITIES[of];
    const value =
      q.unit === 'text' ? `IF(${cell}="","",SUBSTITUTE(${cell},"mm2","mm²"))` : asRead(cell, q.unit, unit);
    return this.known(name, cell, value, q.unit === 'text' ? '1' : unit, exact);
  }

  /** Cell with the words of a number that no quantity has. */
  number(name: string, cell: string): string {
    return this.known(name, cell, `IF(ISNUMBER(${cell}),${cell},"")`, '1', true);
  }

  private known(name: string, cell: string, value: string, unit: string, exact: boolean): string {
    const row = this.places.get(cell) ?? TOP + this.places.size;
    if (!this.places.has(cell)) this.add(row, name, value, unit, exact);
    this.places.set(cell, row);
    return `${SAID}!${address(row, COLUMN.text)}`;
  }

  /** Three places of a number, put together from whole numbers: not every program writes 0.49 as it was rounded. */
  private add(row: number, name: string, value: string, unit: string, exact: boolean): void {
    const [v, power, whole] = (['value', 'power', 'whole'] as const).map((of) =>
      address(row, COLUMN[of], false),
    );
    const formula = (text: string): Cell => ({ role: 'formula', formula: text });
    const behind = printUnit(unit) === '' ? '' : `&" ${printUnit(unit)}"`;
    const digits = `IF(ABS(${v})>=100,1,IF(ABS(${v})>=10,10,IF(ABS(${v})>=1,100,1000)))`;
    // What is stated has no zeros behind it: 0.5, 7.5, 15.
    const round = (places: number): string => `ABS(${v}*${places}-ROUND(${v}*${places},0))<${ROUND}`;
    const fewest = `IF(${round(1)},1,IF(${round(10)},MIN(10,${digits}),IF(${round(100)},MIN(100,${digits}),${digits})))`;
    const places = `"."&RIGHT("000"&(${whole}-${power}*INT(${whole}/${power})),LEN(${power})-1)`;
    put(this.cells, row, COLUMN.name, words(name));
    put(this.cells, row, COLUMN.value, formula(value));
    put(
      this.cells,
      row,
      COLUMN.power,
      formula(exact ? `IF(ISNUMBER(${v}),${fewest},1)` : `IF(ISNUMBER(${v}),${digits},1)`),
    );
    put(this.cells, row, COLUMN.whole, formula(`IF(ISNUMBER(${v}),ROUND(ABS(${v})*${power},0),0)`));
    put(
      this.cells,
      row,
      COLUMN.text,
      formula(
        `IF(ISNUMBER(${v}),IF(${v}*${power}<=-0.5,"−","")&INT(${whole}/${power})&IF(${power}=1,"",${places})${behind},IF(${v}="","unknown",${v}))`,
      ),
    );
  }
}

/** A value as people read it: a word for a time without end. */
export const asRead = (cell: string, from: string, unit: string): string =>
  from === 's' && unit === 's'
    ? `IF(ISNUMBER(${cell}),IF(${cell}>=longest_stuck,"unlimited",${cell}),"")`
    : turned(cell, from, unit);

const [OPEN, CLOSE] = ['⟦', '⟧'];

/** The sentence as a formula; `value` and `limit` are cells with their words. */
export function sentenceFormula(
  said: Said,
  rule: RuleId,
  verdict: 'pass' | 'fail' | 'unknown',
  { subject, at, value, limit }: { subject: string; at: At; value: string; limit: string },
): string {
  // A feed run is also a run: its number is the same.
  const index = at.run ?? at.feed;
  const here: At = index === undefined ? at : { ...at, run: index, feed: index };
  const marked = (cell: string): string => `${OPEN}${cell}${CLOSE}`;
  const sentence = WORDS[rule][verdict]({
    subject,
    value: marked(value),
    limit: marked(limit),
    // Of several windows the first one stands for all.
    say: (name, own = {}) => ((own.window ?? 0) > 0 ? undefined : marked(said.of(name, { ...here, ...own }))),
    // Causes stand both: which of them it is, the numbers show.
    is: (name) => name === 'window_stuck' || name === 'window_short',
  });
  const parts = sentence
    .replaceAll('`', '')
    .split(/⟦(.*?)⟧/)
    .flatMap((part, i) => (i % 2 === 1 ? [part] : literals(part)));
  return parts.length === 0
    ? '""'
    : parts.length === 1 && !parts[0]?.startsWith('"')
      ? `""&${parts[0]}`
      : parts.join('&');
}

function literals(text: string): string[] {
  const found: string[] = [];
  for (let at = 0; at < text.length; at += LONGEST)
    found.push(`"${text.slice(at, at + LONGEST).replaceAll('"', '""')}"`);
  return found;
}
