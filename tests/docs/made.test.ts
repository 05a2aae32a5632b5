/** The pages that are made from the declarations keep up with them, and say what they are for. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { shownPictures } from '../../src/build/shown.ts';
import { ALL_CONSTANTS, ALL_TABLES } from '../../src/data/index.ts';
import { quantitiesPage } from '../../src/docs/quantities.ts';
import { rangesPage } from '../../src/docs/ranges.ts';
import { resultPage } from '../../src/docs/result.ts';
import { tablesPage } from '../../src/docs/tables.ts';
import { QUANTITIES } from '../../src/model/model.ts';

const doc = (name: string): string => readFileSync(new URL(`../../docs/${name}`, import.meta.url), 'utf8');

test.each([
  ['quantities.md', quantitiesPage],
  ['ranges.md', rangesPage],
  ['tables.md', tablesPage],
  ['result.md', resultPage],
])('docs/%s is what the declarations say; when stale: npm run docs', (name, page) => {
  // Not the two texts side by side: hundreds of kilobytes would hide the one line that says what to do.
  expect(doc(name) === page(), `docs/${name} is stale: npm run docs`).toBe(true);
});

test('the pictures of README.md are those that the commands draw; when stale: npm run docs', async () => {
  for (const [name, svg] of Object.entries(await shownPictures()))
    expect(doc(name) === svg, `docs/${name} is stale: npm run docs`).toBe(true);
});

/** Cells of the table rows of a page; a `\|` inside a cell does not end it. */
const rows = (text: string): string[][] =>
  text
    .split('\n')
    .filter((line) => line.startsWith('| '))
    .map((line) => line.slice(2, -2).split(/ (?<!\\)\| /));

test('the page of quantities has one row for each quantity, with its label and its formula', () => {
  const found = new Map(rows(quantitiesPage()).map((row) => [row[1], row]));
  for (const [id, q] of Object.entries(QUANTITIES)) {
    const row = found.get(`<a id="${id}"></a>\`${id}\``);
    expect(row, id).toHaveLength(9);
    expect(row?.[2], id).toBe(q.label);
    if (q.kind === 'formula') expect(row?.[5], id).toBe(`\`${q.formula}\``);
    if (q.kind === 'input') expect(row?.[5], id).toContain(q.path);
  }
});

test('every name in a formula leads to its row', () => {
  const page = quantitiesPage();
  const anchors = new Set([...page.matchAll(/<a id="(\w+)">/g)].map(([, id]) => id));
  for (const row of rows(page)) {
    const links = [...(row[8] ?? '').matchAll(/\[(\w+)\]\(#(\w+)\)/g)];
    expect(links.filter(([, name, to]) => name !== to || !anchors.has(to as string))).toEqual([]);
    // What a formula names, read without our own reader: words without a bracket behind and not in quotes, axes apart.
    const formula = (row[5] ?? '').startsWith('`') ? (row[5] ?? '').replace(/"[^"]*"|\[[^\]]*\]/g, ' ') : '';
    const names = formula.match(/\b[A-Za-z_]\w*\b(?!\()/g) ?? [];
    expect(
      [...new Set(names)].filter((name) => !links.some(([, to]) => to === name)),
      row[1],
    ).toEqual([]);
  }
});

test('a value is printed in the unit in which it is read', () => {
  // Published: rho 1/58 ohm mm2/m (IEC 60028); a drop of 0.1 V at rated current is 100 mV.
  const page = quantitiesPage();
  expect(page).toContain('0.017241379310345 Ω·mm²/m');
  expect(page).toContain('| 100 mV |');
});

test('the page of tables has every row of every table, and every constant', () => {
  const page = tablesPage();
  for (const [name, table] of Object.entries(ALL_TABLES)) {
    const section = page.split('\n### ').find((part) => part.includes(`\`${name}\`. Source:`)) ?? '';
    // Titles and the line below them are two rows more; the last table is followed by nothing else.
    expect(rows(section.split('\n## ')[0] ?? ''), name).toHaveLength(table.rows.length + 2);
  }
  for (const group of Object.values(ALL_CONSTANTS))
    for (const id of Object.keys(group)) expect(page).toContain(`\`${id}\``);
});
