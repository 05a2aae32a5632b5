/** The papers as texts: every number is the model's, nothing can leave its place, the same design gives the same bytes. */
import { describe, expect, test } from 'vitest';
import { convert } from '../../src/basis/units.ts';
import { leastBehind, TRIGGER_SIZES } from '../../src/data/trigger-wire.ts';
import { cutList, reels } from '../../src/kit/cut.ts';
import { FACTS } from '../../src/kit/facts.ts';
import { placeholders, wordsOnly } from '../../src/kit/fill.ts';
import { papers } from '../../src/kit/papers.ts';
import { WORDS } from '../../src/kit/words.ts';
import { QUANTITIES, type QuantityName } from '../../src/model/model.ts';
import { CAUTIONS } from '../../src/writers/cautions.ts';
import { DEMOS, demo } from '../design/helpers.ts';
import { readCsv } from './csv-reader.ts';
import { banked, straight } from './designs.ts';
import { jobOf } from './job.ts';

const unescaped = (text: string): string =>
  text
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&quot;', '"')
    .replaceAll('&#39;', "'")
    .replaceAll('&amp;', '&');

interface Value {
  value: string;
  q: string | undefined;
  at: Record<string, number>;
  kit: string | undefined;
  text: string;
}

/** Every marked value of a paper. */
const valuesOf = (html: string): Value[] =>
  [...html.matchAll(/<data ([^>]*)>([^<]*)<\/data>/g)].map(([, attributes = '', text = '']) => {
    const of = (key: string): string | undefined => {
      const found = new RegExp(`(?:^| )${key}="([^"]*)"`).exec(attributes)?.[1];
      return found === undefined ? undefined : unescaped(found);
    };
    return {
      value: of('value') ?? '',
      q: of('data-q'),
      at: JSON.parse(of('data-at') ?? '{}'),
      kit: of('data-kit'),
      text: unescaped(text).replaceAll('\u00a0', ' '),
    };
  });

/** What is left when marked values, names, terminal numbers, drawings and texts of other lists are taken out. */
const bare = (html: string): string =>
  html
    .replace(/<head>[\s\S]*?<\/head>/, '')
    .replace(/<svg[\s\S]*?<\/svg>/g, '')
    .replace(/<div class="held">[\s\S]*?<\/div>/g, '')
    .replace(/<data [^>]*>[^<]*<\/data>/g, '')
    .replace(/<bdi[^>]*>[^<]*<\/bdi>/g, '')
    .replace(/<b class="t">(?:15|30|31|85|86|87)<\/b>/g, '')
    .replace(/<code>[^<]*<\/code>/g, '')
    // Built from the design and the tables, and tested with the lists.
    .replace(/<span data-made="">(?:[^<]|<bdi>[^<]*<\/bdi>)*<\/span>/g, '')
    .replace(/<[^>]*>/g, ' ');

/** `1.50 m` → 1.5 in the unit of the model; a value printed in two units gives both. */
function printed(text: string, unit: string): number[] {
  const parts = [...text.replaceAll('−', '-').matchAll(/(-?\d+(?:\.\d+)?) ?([^\s()\d][^\s()]*)?/g)];
  return parts.map(([, number, symbol]) => {
    const value = Number(number);
    if (symbol === '°F') return ((value - 32) * 5) / 9;
    if (symbol === '°C' || symbol === undefined || unit === '1' || unit === 'degC')
      return symbol === '%' ? value / 100 : value;
    const name = symbol.replace('mΩ', 'mohm').replace('Ω', 'ohm').replace('mm²', 'mm2');
    return value * convert(name, unit);
  });
}

/** Half of the last printed digit, in the unit of the model: all that print can hold. */
function rounding(text: string, unit: string): number {
  const worst = [...text.matchAll(/\d+(?:\.(\d+))? ?([^\s()\d][^\s()]*)?/g)].map(
    ([, places = '', symbol]) => {
      const step = 0.5 * 10 ** -places.length;
      if (symbol === '°F') return (step * 5) / 9;
      if (symbol === undefined || symbol === '°C') return step;
      if (symbol === '%') return step / 100;
      if (unit === '1' || unit === 'degC') return step;
      return step * convert(symbol.replace('mΩ', 'mohm').replace('Ω', 'ohm'), unit);
    },
  );
  return Math.max(...worst) * (1 + 1e-9) + 1e-12;
}

const DESIGNS: [string, string][] = [
  ['straight six, both units', straight(6)],
  ['US units', straight(4, '  units: us\n')],
  ['metric', straight(4, '  units: metric\n  relay_at: { main: 0.6 m }\n')],
  ['two banks', banked(8)],
  ['a design that fails', straight(16).replace('gauge: 6 AWG', 'gauge: 22 AWG')],
  ...DEMOS.map((name): [string, string] => [name, demo(name)]),
];

describe.each(DESIGNS)('instructions of %s', (_, design) => {
  const job = jobOf(design);
  const made = papers(job, WORDS);

  test('every value of the model is the one that the model has, and is printed to its last digit', async () => {
    const html = (await made).get('instructions.html') ?? '';
    const all = valuesOf(html).filter(({ q }) => q !== undefined);
    expect(all.length).toBeGreaterThan(40);
    for (const { q, at, value, text } of all) {
      const model = job.result.evaluation.value(q as QuantityName, at);
      const where = `${q} ${JSON.stringify(at)}: ${text}`;
      expect(String(model), where).toBe(value);
      if (typeof model !== 'number') {
        expect(text.replace('mm²', 'mm2'), where).toBe(model);
        continue;
      }
      const { unit } = QUANTITIES[q as QuantityName];
      const read = printed(text, unit);
      expect(read.length, where).toBeGreaterThan(0);
      for (const one of read) expect(Math.abs(one - model), where).toBeLessThanOrEqual(rounding(text, unit));
    }
  });

  test('no digit stands in the papers but in a marked value, a name or a terminal', async () => {
    const html = (await made).get('instructions.html') ?? '';
    // The one other text with digits: designations of standards.
    expect(bare(html).match(/.{0,30}\d.{0,30}/g) ?? []).toEqual([]);
  });

  test('lengths that the kit works out follow from the design', async () => {
    const { kit } = job.result.evaluation.design;
    const html = (await made).get('bench.html') ?? '';
    const cuts = valuesOf(html).filter((v) => v.kit?.startsWith('cut ') && !v.kit.includes('tolerance'));
    expect(cuts.length).toBeGreaterThan(3);
    for (const { kit: what, value, text } of cuts) {
      const piece = job.harness.pieces.find(({ id }) => `cut ${id}` === what);
      const length = piece?.length ?? Number.NaN;
      const expected = length * (1 + kit.allowance) + 2 * kit.end_allowance;
      expect(Number(value), what).toBeCloseTo(expected, 12);
      for (const one of printed(text, 'm'))
        expect(Math.abs(one - expected), what).toBeLessThanOrEqual(rounding(text, 'm'));
    }
  });

  test('all cautions come before anything else', async () => {
    const html = (await made).get('instructions.html') ?? '';
    const first = html.indexOf('<h2>In the box</h2>');
    for (const caution of CAUTIONS) {
      const at = html.indexOf(caution);
      expect(at, caution).toBeGreaterThan(0);
      expect(at, caution).toBeLessThan(first);
    }
    for (const word of [
      'eye protection',
      'Solder, hot air',
      'kill switch',
      'exhaust gas kills',
      'Nobody holds a probe or a lead on a coil terminal',
      'High-tension',
      'set the vehicle on fire',
      'Airbags',
    ])
      expect(html.slice(0, first)).toContain(word);
  });

  test('the tables hold every piece and part', async () => {
    const all = await made;
    const read = (name: 'cut-list.csv' | 'reels.csv' | 'labels.csv' | 'parts.csv') =>
      readCsv(all.get(name) ?? '');
    const cuts = read('cut-list.csv');
    expect(cuts.slice(1).map((row) => row[0])).toEqual(cutList(job).map(({ piece }) => piece.id));
    const reelRows = read('reels.csv').slice(1);
    const { units } = job.result.evaluation.design.kit;
    reels(job).forEach(({ kit }, i) => {
      // Written to a hundredth of a metre, or a tenth of a foot of 0.3048 m.
      if (kit === null) expect(reelRows[i]?.[4]).toBe('');
      else if (units === 'us')
        expect(Math.abs(Number(reelRows[i]?.[4]) - kit / 0.3048)).toBeLessThanOrEqual(0.0501);
      else expect(Math.abs(Number(reelRows[i]?.[4]) - kit)).toBeLessThanOrEqual(0.00501);
    });
    // A machine cuts by millimetres, or by hundredths of an inch of 25.4 mm.
    cutList(job).forEach(({ cut }, i) => {
      const [given, tolerance] = [cuts[i + 1]?.[4], cuts[i + 1]?.[5]];
      if (cut === null) expect(given).toBe('');
      else if (units === 'us') expect(Math.abs(Number(given) - cut / 0.0254)).toBeLessThanOrEqual(0.00501);
      else expect(Math.abs(Number(given) - cut * 1000)).toBeLessThanOrEqual(0.501);
      expect(tolerance).not.toBe('');
    });
    for (const name of ['cut-list.csv', 'reels.csv', 'labels.csv', 'parts.csv'] as const)
      for (const cell of read(name).flat()) expect(cell, name).not.toContain('___');
    expect(read('labels.csv').length).toBeGreaterThan(2 * job.harness.pieces.length);
    for (const name of ['cut-list.csv', 'reels.csv', 'labels.csv', 'parts.csv'] as const) {
      const [head, ...rows] = read(name);
      for (const row of rows) expect(row.length).toBe(head?.length);
    }
    for (const title of cuts[0] ?? [])
      if (/length|Strip|Tolerance/.test(title)) expect(title).toMatch(units === 'us' ? /\[in\]$/ : /\[mm\]$/);
  });

  test('every first page, and every row for machines, says whether to build from it', async () => {
    const all = await made;
    const { verdict } = job.result;
    for (const [name, text] of all) {
      if (verdict !== 'pass')
        expect(text.split(/<\/h1>|\n/).join(' '), name).toContain('NOT RELEASED FOR BUILDING');
      else expect(text, name).not.toContain('NOT RELEASED');
      if (!name.endsWith('.csv')) continue;
      for (const row of readCsv(text).slice(1))
        expect(row.at(-1), name).toMatch(verdict === 'pass' ? /^the calculation passes$/ : /^NOT RELEASED/);
    }
  });
});

test('the work has one order: no power before it is measured, no coil before the trigger is sure, no start before that', () => {
  const html = papers(jobOf(straight(6)), WORDS).get('instructions.html') ?? '';
  const steps = [
    'Find every switch that stops the engine',
    'Disconnect the battery, negative post first. Tie',
    'Pick it up downstream of every switch',
    'Do not plug in the coils yet',
    'Battery negative still open, fuse out, relay out, coils unplugged',
    'Connect the battery, positive post first',
    'A helper cranks',
    'Put in ',
    'Plug in the coils',
    'Start the engine and let it idle',
    'Press the kill switch',
    'Take the readings of the test card',
  ].map((words) => html.indexOf(words));
  expect(steps.every((at) => at > 0)).toBe(true);
  expect(steps).toEqual(steps.toSorted((a, b) => a - b));
  // Once, and never again.
  for (const once of ['Plug in the coils', 'Connect the battery, positive', 'Put in '])
    expect(html.split(once)).toHaveLength(2);
});

test('the trigger: its limit while cranking, and the least wire behind its fuse', () => {
  const html = papers(jobOf(straight(2)), WORDS).get('instructions.html') ?? '';
  // 6.5 V at 20 °C, coil at 50 °C and 40 K above: 6.5 × (234.5 + 90) / (234.5 + 20) = 8.29 V; the supply has 9.6 V.
  expect(html).toMatch(/at least <bdi>|read the same place: at least <data value="8\.28/);
  // 33 CFR 183.425 table 5, 105 °C, in engine spaces: 20 A × 0.85 = 17 A, 25 × 0.85 = 21.25, 35 × 0.85, 45 × 0.85.
  expect(TRIGGER_SIZES.map(({ gauge, amps }) => [gauge, amps])).toEqual([
    ['18 AWG', expect.closeTo(17, 9)],
    ['16 AWG', expect.closeTo(21.25, 9)],
    ['14 AWG', expect.closeTo(29.75, 9)],
    ['12 AWG', expect.closeTo(38.25, 9)],
  ]);
  expect([10, 20, 30, 40].map(leastBehind)).toEqual(['18 AWG', '16 AWG', '12 AWG', null]);
});

test('the same job gives the same papers', async () => {
  const job = jobOf(straight(6));
  const [one, two] = [papers(job, WORDS), await papers(job, WORDS)];
  expect([...one]).toEqual([...two]);
});

test('nothing in the words is a number, and every value in braces exists', () => {
  const texts = [
    ...Object.values(WORDS)
      .flat()
      .flatMap((line) => ('text' in line ? [line.text] : [line.sign, line.cause, line.act])),
  ];
  expect(texts.length).toBeGreaterThan(70);
  for (const text of texts) {
    expect(wordsOnly(text), text).not.toMatch(/\d/);
    for (const key of placeholders(text))
      expect(Object.hasOwn(FACTS, key) || Object.hasOwn(QUANTITIES, key), `{${key}}`).toBe(true);
  }
});

const HOSTILE = [
  "=cmd|' /C calc'!A0",
  '<script>alert(1)</script>',
  '"><img src=x onerror=alert(1)>',
  '</title></style></svg><script>1</script>',
  'right to left סוף',
  'emoji 😀👩‍🔧 and ﷽',
  '{fuses} {{x}}',
  '@SUM(1)',
  'x'.repeat(200),
];

test.each(HOSTILE)('the title %j stays text', async (title) => {
  const kit = `  colours: { main: ${JSON.stringify(title.slice(0, 40))} }\n  parts: { fuse: ${JSON.stringify(title.slice(0, 80))} }\n`;
  const job = jobOf(straight(1, kit, title));
  for (const [name, text] of papers(job, WORDS)) {
    if (name.endsWith('.csv')) {
      for (const cell of readCsv(text).flat()) expect(cell, name).not.toMatch(/^\s*[=+\-@]/);
      continue;
    }
    expect(text, name).not.toMatch(/<script|<img|onerror=alert\(1\)>(?!&)/);
    // As many begins as ends: nothing was closed from inside.
    for (const tag of ['title', 'style', 'svg', 'html', 'body', 'table', 'bdi', 'data'])
      expect((text.match(new RegExp(`<${tag}[ >]`, 'g')) ?? []).length, `${name} ${tag}`).toBe(
        (text.match(new RegExp(`</${tag}>`, 'g')) ?? []).length,
      );
    const shown = unescaped(text);
    if (name !== 'diagram.svg') expect(shown, name).toContain(title);
  }
});

test('text of any length and kind stays text, also where the reader would not let it through', async () => {
  const job = jobOf(straight(1));
  const title = `=${'<&>"'.repeat(8_000)}\u0000\ud800`;
  const evaluation = { ...job.result.evaluation, design: { ...job.result.evaluation.design, title } };
  for (const [name, text] of papers({ ...job, result: { ...job.result, evaluation } }, WORDS)) {
    expect(text.includes('\u0000'), name).toBe(false);
    expect(text, name).not.toMatch(/[\ud800-\udfff]/);
    if (!name.endsWith('.csv')) expect(text, name).not.toContain('<&>');
  }
});
