/** What the reader does with JSON, with aliases, and with text that was made to hurt. */
import fc from 'fast-check';
import { afterEach, describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { readDesign } from '../../src/design/read.ts';
import { cpu } from '../cpu.ts';
import { samples } from '../samples.ts';
import { base, DEMOS, demo, design } from './helpers.ts';

/** A design without its text, in which two ways of writing differ. */
const values = (text: string) => ({ ...design(text), text: '' });

/** Every problem has a place and words; a design has coils. Throws nothing. */
function sane(text: string): void {
  const result = readDesign(text, 'x.yaml');
  if (result.ok) {
    expect(result.design.coils.length).toBeGreaterThan(0);
    return;
  }
  expect(result.problems.length).toBeGreaterThan(0);
  for (const p of result.problems) {
    expect(p.line).toBeGreaterThanOrEqual(1);
    expect(p.column).toBeGreaterThanOrEqual(1);
    expect(p.found).not.toBe('');
    expect(p.taken).not.toBe('');
  }
}

afterEach(() => {
  expect(({} as Record<string, unknown>).polluted).toBeUndefined();
});

describe('other ways of writing a design', () => {
  test.each(DEMOS)('%s as JSON is the same design', (name) => {
    const data = parse(demo(name));
    expect(values(JSON.stringify(data))).toEqual(values(demo(name)));
    expect(values(JSON.stringify(data, null, '\t'))).toEqual(values(demo(name)));
  });

  test('a mistake in JSON has its place', () => {
    const text = JSON.stringify(parse(base(['gauge: 14 AWG', 'gauge: 13 AWG'])), null, 2);
    const row = text.split('\n').findIndex((line) => line.includes('13 AWG'));
    const column = (text.split('\n')[row]?.indexOf('"13 AWG"') ?? -1) + 1;
    expect(readDesign(text, 'd.json')).toMatchObject({
      ok: false,
      problems: [{ line: row + 1, column, key: 'feed[1].gauge' }],
    });
  });

  test('line ends of both kinds, and a byte order mark', () => {
    expect(design(base().replaceAll('\n', '\r\n'))).toEqual(design(base()));
    expect(design(`\uFEFF${base()}`)).toEqual(design(base()));
  });

  test('a few aliases are fine', () => {
    const d = design(
      base(['ambient: 90 degC', 'ambient: &hot 90 degC'], ['ambient: 80 degC', 'ambient: *hot']),
    );
    expect(d.runs[2]?.ambient).toBe(90);
  });
});

let reading: number | undefined;
/** Time of `work` in units of the time that it takes to read an ordinary design. */
const readings = (work: () => void): number => {
  reading ??=
    cpu(() => {
      for (let i = 0; i < 20; i++) readDesign(base(), 'x.yaml');
    }, 5) / 20;
  return cpu(work) / reading;
};

describe('text that was made to hurt', () => {
  // Each of these would take minutes, or all memory, if it were expanded or compared pair by pair; 500 readings are far
  // from both (about a second) and far above what they take.
  const QUICK = 500;
  const timed = (text: string): { took: number; found: string[] } => {
    let result: ReturnType<typeof readDesign> | undefined;
    const took = readings(() => {
      result = readDesign(text, 'x.yaml');
    });
    return { took, found: result?.ok === false ? result.problems.map((p) => p.found) : [] };
  };

  test('aliases of aliases', () => {
    const lines = ['a0: &a0 [x, x, x, x, x, x, x, x, x]'];
    for (let i = 1; i < 10; i++)
      lines.push(
        `a${i}: &a${i} [${Array(9)
          .fill(`*a${i - 1}`)
          .join(', ')}]`,
      );
    const { took, found } = timed(lines.join('\n'));
    expect(found).toEqual(['more than 100 aliases']);
    expect(took).toBeLessThan(QUICK);
  });

  test('a large value, repeated', () => {
    const list = Array(1000).fill('x').join(', ');
    const { took, found } = timed(`a: &a [${list}]\nb: [${Array(50).fill('*a').join(', ')}]`);
    expect(found).toEqual(['more than 20000 values']);
    expect(took).toBeLessThan(QUICK);
  });

  test('nested until the stack ends', () => {
    for (const text of [
      '['.repeat(20_000),
      '{a: '.repeat(20_000),
      `${'['.repeat(20_000)}${']'.repeat(20_000)}`,
    ])
      expect(timed(text).found.some((f) => f.includes('deep') || f.includes('YAML'))).toBe(true);
  });

  test('a number of a million digits', () => {
    const { took, found } = timed(base(['length: 1.5 m', `length: "${'1'.repeat(1_000_000)}\\nx"`]));
    expect(found).toHaveLength(1);
    expect(took).toBeLessThan(QUICK);
  });

  test('many keys', () => {
    const keys = Array.from({ length: 15_000 }, (_, i) => `k${i}: 1`).join('\n');
    const { took, found } = timed(keys);
    expect(found.length).toBeGreaterThanOrEqual(15_000);
    // Reading takes most of it, and is linear.
    expect(took).toBeLessThan(3 * QUICK);
  });

  test('1 MiB is the most, counted in bytes', () => {
    const room = 1024 * 1024 - new TextEncoder().encode(base()).length - 1;
    expect(readDesign(`${base()}#${'x'.repeat(room)}`, 'x.yaml').ok).toBe(true);
    expect(timed(`${base()}#${'x'.repeat(room + 1)}`).found).toEqual(['a file of more than 1 MiB']);
    // Half as many characters of two bytes each are too many as well.
    expect(timed(`${base()}#${'é'.repeat(room / 2 + 1)}`).found).toEqual(['a file of more than 1 MiB']);
  });

  test('a thousand syntax errors are not all listed', () => {
    const { found } = timed('}\n'.repeat(1000));
    expect(found.length).toBeLessThan(60);
    expect(found.some((f) => /more such lines/.test(f))).toBe(true);
  });
});

describe('a mebibyte of signs', () => {
  // Without the bounds the parser takes up to 13 s for these and 2 GB, or ends the process; 1500 readings of a design
  // take about 3 s.
  const SLOW = 1500;
  const full = (text: string): string => text.repeat(Math.floor((1024 * 1024) / text.length));

  test.each([
    '[',
    ']',
    '{',
    '}',
    '[]',
    '{}',
    '[}',
    '[ ',
    '[\n',
    'a: [',
    'x: [\n',
    '[a,',
    '[,',
    '- ',
    '-\n',
    '? ',
    ': ',
    '- ? : [a]',
    '!a ',
    '&a ',
    '&a\n',
    '*a ',
    '"" ',
    "'",
    '|\n',
    '- |\n',
    'k:\n',
    'a: b\n',
    '#\n',
    '---\n',
    '---\n[',
    '...\n',
    '%a\n',
    '- - - -\n',
    `${'['.repeat(20)}${']'.repeat(20)}\n`,
  ])('%j', (sign) => {
    expect(readings(() => sane(full(sign)))).toBeLessThan(SLOW);
  });

  test('what nests too deep has its place', () => {
    const read = readDesign(`${base()}\n# here\nx: ${'['.repeat(1000)}`, 'x.yaml');
    const line = base().split('\n').length + 2;
    expect(read).toMatchObject({
      ok: false,
      problems: [{ line, found: 'values nested too deep', taken: 'allowed: 12 levels' }],
    });
  });

  test('brackets, dashes and colons in text and comments count for nothing', () => {
    const marks = '[[[[ {{{{ - - - ? : ]]]] }}}} '.repeat(50);
    const text = `${base()}\n# ${marks}\nnotes: |\n  ${marks}\n`;
    expect(design(text).notes).toBe(`${marks}\n`);
    expect(design(text.replace('notes: |\n  ', 'notes: "').replace(/\n$/, '"')).notes).toBe(marks);
  });
});

describe('any text', () => {
  test('never throws: arbitrary text', () => {
    fc.assert(fc.property(fc.string({ unit: 'binary', maxLength: 300 }), sane), { numRuns: 300 });
  });

  test('never throws: signs that mean something in YAML', () => {
    const sign = fc.constantFrom(
      ...'[]{}:,-?!&*#|>%@`"\'\n \t~<=ab10.',
      '__proto__: ',
      'feed: ',
      '- ',
      '&a ',
      '*a ',
    );
    fc.assert(
      fc.property(fc.array(sign, { maxLength: 80 }), (signs) => sane(signs.join(''))),
      { numRuns: samples(500) },
    );
  });

  test('never throws: a demo with a piece cut out, doubled or replaced', () => {
    const edit = fc.record({
      demo: fc.constantFrom(...DEMOS),
      at: fc.double({ min: 0, max: 1, noNaN: true }),
      length: fc.nat(80),
      put: fc.oneof(
        fc.string({ maxLength: 12 }),
        fc.constantFrom(
          '[]',
          '{}',
          '0',
          '-1',
          '.nan',
          '1e400 V',
          'null',
          '\n',
          '__proto__',
          'constructor',
          '*x',
          '&x ',
        ),
      ),
      double: fc.boolean(),
    });
    fc.assert(
      fc.property(edit, ({ demo: name, at, length, put, double }) => {
        const text = demo(name);
        const start = Math.floor(at * text.length);
        const piece = text.slice(start, start + length);
        sane(text.slice(0, start) + put + (double ? piece + piece : '') + text.slice(start + length));
      }),
      { numRuns: samples(400) },
    );
  });

  test('never throws: a demo with any value in the place of one of its own', () => {
    const anything = fc.anything({ maxDepth: 2, withNullPrototype: false });
    const pathsOf = (value: unknown, path: (string | number)[] = []): (string | number)[][] => [
      ...(path.length > 0 ? [path] : []),
      ...(typeof value === 'object' && value !== null
        ? Object.entries(value).flatMap(([k, v]) =>
            pathsOf(v, [...path, Array.isArray(value) ? Number(k) : k]),
          )
        : []),
    ];
    const paths = pathsOf(parse(demo('hill-climb-six')));
    fc.assert(
      fc.property(fc.constantFrom(...paths), anything, (path, value) => {
        const data = parse(demo('hill-climb-six'));
        let at = data;
        for (const step of path.slice(0, -1)) at = at[step];
        at[path[path.length - 1] as string] = value ?? null;
        sane(JSON.stringify(data, (_, v) => (typeof v === 'bigint' ? String(v) : v)));
      }),
      { numRuns: samples(400) },
    );
  });
});
