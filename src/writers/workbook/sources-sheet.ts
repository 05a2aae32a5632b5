/** Every source that the workbook leans on, and what is meant by the words about how a value was seen. */

import type { Quantity } from '../../basis/quantity.ts';
import { type Citation, SOURCES, type Source, type SourceKey, type Status } from '../../basis/sources.ts';
import type { Design } from '../../design/design.ts';
import type { Cell, Sheet } from '../../engine/cell.ts';
import type { Grid } from '../../engine/translate.ts';
import { RULE_IDS, RULES } from '../../findings/rules.ts';
import { WORDS } from '../../findings/words.ts';
import { QUANTITIES } from '../../model/model.ts';
import { assumed } from './assumed.ts';
import { opening, type Page, section, table, words } from './page.ts';

const WIDTHS = [30, 27, 22, 46, 120];
/** What uses a source is listed up to this many, then counted. */
const MOST_USES = 3;

const LEGEND: Readonly<Record<Status, string>> = {
  printed: 'Read in a copy of the source.',
  quoted: 'Read in another publication that quotes the source.',
  'from memory': 'Remembered, not looked up: check it against the source before you rely on it.',
  calculated: 'Worked out from other published values.',
  'common practice': 'What the trade does; no publication backs it.',
  arbitrary: 'Chosen by this tool; it could have been a different value.',
  physics: 'Follows from physics or arithmetic.',
  definition: 'What a word or a symbol means here: a definition claims nothing.',
  design: 'Given by the design.',
};

/** Everything in the workbook that cites something, with its words. */
function cited(): [Citation, string][] {
  const quantities = Object.values(QUANTITIES).flatMap((q: Quantity): [Citation, string][] =>
    q.source ? [[q.source, q.label]] : [],
  );
  const rules = RULE_IDS.map((id): [Citation, string] => [RULES[id].source, `rule: ${WORDS[id].title}`]);
  return [...quantities, ...rules];
}

export function sourcesPage(grid: Grid, design: Design): Page {
  const cells: Sheet = [];
  const about =
    'Each value carries its source. Makers’ data sheets and local codes take precedence over all of these.';
  let row = opening(cells, 'Sources', about);
  const taken = assumed(grid, design);
  if (taken.length > 0) {
    row = section(cells, row, 'Assumed where the design says nothing', WIDTHS.length - 1);
    const titles = ['What', 'Where in the design file', 'Taken', 'Why'];
    row = table(
      cells,
      row,
      titles.map((title) => ({ title })),
      taken,
    );
  }
  row = section(cells, row, 'Sources of the values', WIDTHS.length - 1);
  row = table(
    cells,
    row,
    [
      { title: 'Source' },
      { title: 'What it is about', span: 2 },
      { title: 'Place, and how it was seen' },
      { title: 'Used for' },
    ],
    rows(),
  );
  row = section(cells, row, 'How a value was seen', WIDTHS.length - 1);
  table(
    cells,
    row,
    [{ title: 'Words' }, { title: 'Meaning', span: 3 }],
    Object.entries(LEGEND).map(([status, meaning]) => [words(status), words(meaning)]),
  );
  return {
    name: 'Sources',
    kind: 'shown',
    cells,
    widths: WIDTHS,
    frozen: [2, 0],
    // What a source is used for is for the screen.
    landscape: false,
    printed: WIDTHS.length - 1,
    tall: 1,
    looks: [],
  };
}

/** A row for each source, in the order of their keys; last what no publication says. */
function rows(): Cell[][] {
  const found = new Map<SourceKey | undefined, { seen: Set<string>; uses: Set<string> }>();
  for (const [{ key, where, status, confidence }, use] of cited()) {
    const { seen, uses } = found.get(key) ?? { seen: new Set(), uses: new Set() };
    const how = confidence === undefined ? status : `${status}, ${confidence} confidence`;
    seen.add(where === undefined ? how : `${where} (${how})`);
    uses.add(use);
    found.set(key, { seen, uses });
  }
  return [...found]
    .sort(([a = '~'], [b = '~']) => (a < b ? -1 : 1))
    .map(([key, { seen, uses }]) => {
      const source: Source | null = key === undefined ? null : SOURCES[key];
      const rest = uses.size - MOST_USES;
      const listed = [...uses].slice(0, MOST_USES).join('; ');
      return [
        words(source?.publisher ?? 'no publication'),
        words(source?.title ?? ''),
        words([...seen].sort().join('; ')),
        words(listed + (rest > 0 ? `; and ${rest} more, see Quantities` : '')),
      ];
    });
}
