/** What a shop's file says stands on every paper where it belongs, and its prices on none of them. */
import { expect, test } from 'vitest';
import { papers } from '../../src/kit/papers.ts';
import { kitBills, priceTable } from '../../src/kit/prices.ts';
import { WORDS } from '../../src/kit/words.ts';
import { readCsv } from './csv-reader.ts';
import { PAPERS, shop, straight } from './designs.ts';
import { jobOf } from './job.ts';

const TERMS = 'Two years on crimps that were not altered.';
const KIT = `  colours: { engine strap: violet }
  terminals: { engine strap: { from: { use: ring A }, to: { use: ring A } } }
`;
const made = (warranty = TERMS, units = 'metric') => {
  const text = `date: 2031-05-06\ninstruments: { meter: { use: bench meter } }\n${straight(4, `${KIT}  units: ${units}\n`)}${shop(warranty)}`;
  return { ...jobOf(text), logo: 'data:image/svg+xml;base64,PHN2Zy8+' };
};

/** What a person reads of it. */
const read = (html: string): string =>
  html
    .replace(/<(style|svg)[\s\S]*?<\/\1>/g, '')
    .replace(/<[^>]*>/g, '')
    .replaceAll('\u00a0', ' ');

test.each(PAPERS)('%s: name, address, contact, logo, revision, date, warranty, on every record', (paper) => {
  const job = made();
  const html = papers(job, WORDS).get(paper) ?? '';
  const heads = paper === 'build-record.html' ? job.serials.length : 1;
  for (const said of [
    '1 Nowhere Street',
    'Anytown',
    'Questions: 555-0199',
    'Revision R7, date 2031-05-06',
    TERMS,
  ])
    expect(read(html).split(said), said).toHaveLength(heads + 1);
  expect(html.split(`<img alt="" src="${job.logo}">`)).toHaveLength(heads + 1);
  // The foot of every page.
  expect(html).toMatch(
    /@bottom-left\{content:"Invented Spark Works [^"]*revision R7 [^"]*2031-05-06 [^"]*ab12ab12ab12"/,
  );
});

test('the drawing has them in its title block, labels and tables in their rows', () => {
  const all = papers(made(), WORDS);
  for (const said of ['Invented Spark Works, 555-0199', 'Revision R7, date 2031-05-06'])
    expect(all.get('diagram.svg')).toContain(said);
  const kit = readCsv(all.get('labels.csv') ?? '').filter(([kind]) => kind === 'kit');
  expect(kit.map((row) => row.slice(3, 7))).toEqual(
    ['A001', 'A002', 'A003'].map((serial) => [
      serial,
      'Invented engine',
      'design ab12ab12ab12, revision R7',
      'Invented Spark Works, 555-0199',
    ]),
  );
  for (const name of ['parts.csv', 'cut-list.csv', 'reels.csv', 'labels.csv'] as const) {
    const [head = [], ...rows] = readCsv(all.get(name) ?? '');
    for (const row of rows) expect(row[head.indexOf('Revision')], name).toBe('R7');
  }
});

test('the step that tells whom to ask names the shop’s contact', () => {
  const text = read(papers(made(), WORDS).get('instructions.html') ?? '');
  expect(text).toContain('stop and ask: 555-0199');
  expect(text).toContain('Ask 555-0199.');
});

test('crimp height, force, die, strip and stock number are the shop’s, to what a calliper shows', () => {
  const bench = read(papers(made(), WORDS).get('bench.html') ?? '');
  for (const said of ['4.41 mm', '700 N, shop’s file', 'press 2']) expect(bench).toContain(said);
  // 4.41 mm / 25.4 = 0.1736 in; 700 N / 4.44822 = 157.4 lbf.
  const us = read(papers(made(TERMS, 'us'), WORDS).get('bench.html') ?? '');
  for (const said of ['0.174 in', '157 lbf, shop’s file']) expect(us).toContain(said);
  const [head = [], ...cuts] = readCsv(papers(made(TERMS, 'us'), WORDS).get('cut-list.csv') ?? '');
  const strap = cuts.find(([wire]) => wire === 'engine strap') ?? [];
  const of = (title: string) => strap[head.indexOf(title)];
  // 12 mm are 0.472 in; 0.5 m × 1.05 + 20 mm = 545 mm, that is 21.457 in.
  expect(['Crimp height from [in]', 'Strip to [in]', 'Cut length [in]', 'Die to'].map(of)).toEqual([
    '0.174',
    '0.47',
    '21.46',
    'press 2',
  ]);
  const parts = readCsv(papers(made(), WORDS).get('parts.csv') ?? '');
  expect(parts.find((row) => row[2]?.includes('ring A'))?.[3]).toBe('R-100');
});

test('the test card says how good the instruments are that its ranges count', () => {
  const card = read(papers(made(), WORDS).get('test-card.html') ?? '');
  expect(card).toContain('meter 0.7 % + 3 digits');
});

test('a long warranty stands in the instructions, line by line, and the other papers say so', () => {
  const long = Array.from({ length: 30 }, (_, i) => `Condition ${i + 1} of the warranty.`).join('\n');
  const all = papers(made(long), WORDS);
  expect(all.get('instructions.html')).toContain('Condition 30 of the warranty.');
  for (const paper of PAPERS.slice(1)) {
    expect(all.get(paper), paper).toContain('Warranty: see the instructions.');
    expect(all.get(paper), paper).not.toContain('Condition 30');
  }
});

test('prices are for the shop alone', () => {
  const job = made();
  // Two rings on the strap.
  expect(kitBills(job)?.kit.total).toBeGreaterThan(2 * 55.5);
  expect(priceTable(job)).toContain('55.5');
  for (const [name, text] of papers(job, WORDS))
    for (const price of ['EUR', '55.5', '77.7']) expect(read(text), `${name}: ${price}`).not.toContain(price);
});
