/** A coil that was measured goes into the shop's file, without the resistance of its feed and at 20 degC. */
import { expect, test } from 'vitest';
import { readShop } from '../../src/design/shop/read.ts';
import { withCoil } from '../../src/shop/save-coil.ts';
import { base, design } from '../design/helpers.ts';

const FOUND = { ohm: 0.6, henry: 0.0028, from: 'recording clamp.csv' };
const added = (text: string, temperature: string) => {
  const read = readShop({ text, file: 'shop.yaml' });
  if (!read.ok) throw new Error('the file cannot be read');
  const own = design(base(['  inductance: 3.0 mH', `  inductance: 3.0 mH\n  temperature: ${temperature}`]));
  const now = withCoil(text, 'bench coil', FOUND, own);
  const again = readShop({ text: now, file: 'shop.yaml' });
  if (!again.ok) throw new Error(JSON.stringify(again.problems));
  return { now, coils: again.shop.coils };
};

test('cold as it was measured, behind those that are there; comments stay', () => {
  const { now, coils } = added('# ours\ncoils:\n  - { name: A, resistance: 0.5 ohm } # first\n', '20 degC');
  expect(coils?.map(({ name }) => name)).toEqual(['A', 'bench coil']);
  expect(coils?.[1]).toMatchObject({ resistance: 0.6, inductance: 0.0028, from: 'recording clamp.csv' });
  for (const kept of ['# ours', '# first']) expect(now).toContain(kept);
});

test('a warm one is stated at 20 degC, in a file that had no coils', () => {
  const { coils } = added('currency: EUR\n', '100 degC');
  // Copper gains 0.393 % for each kelvin: 0.6 / (1 + 0.00393 · 80) = 0.4565 ohm.
  expect(coils?.[0]?.resistance).toBeCloseTo(0.4565, 3);
});

const LINE =
  '{ name: bench coil, resistance: 0.6 ohm, inductance: 2.8 mH, driver_drop: 0 V, from: recording clamp.csv }';
const KEYS = [
  'name: bench coil',
  'resistance: 0.6 ohm',
  'inductance: 2.8 mH',
  'driver_drop: 0 V',
  'from: recording clamp.csv',
];
const REST = 'relays:\n    -   { name:  R,rating:   30 A  }   # odd spacing stays\n\n\n# the end\n';

const MARK = '\ufeff';
/** Texts as some editors write them: a mark before the first letter, lines that end with a return. */
test.each([
  ['a mark', (text: string) => MARK + text],
  ['returns', (text: string) => text.replaceAll('\n', '\r\n')],
  ['both', (text: string) => MARK + text.replaceAll('\n', '\r\n')],
])('%s: it stays, the coil has it too, and the file is read', (_, as) => {
  for (const [before, lines] of [
    ['currency: EUR # ours\ncoils:\n  - name: A\n    resistance: 0.5 ohm\n', KEYS],
    ['# ours\ncoils:\n  - { name: A, resistance: 0.5 ohm }\n', [LINE]],
    ['currency: EUR', [LINE]],
  ] as const) {
    const text = as(before);
    const { now, coils } = added(text, '20 degC');
    expect(now.startsWith(text)).toBe(true);
    expect(coils?.at(-1)?.name).toBe('bench coil');
    // A file of one line has no ends to go by.
    const ends = before.includes('\n') ? text.includes('\r\n') : false;
    for (const line of lines) expect(now).toContain(`${line}${ends ? '\r\n' : '\n'}`);
    expect(now.slice(1)).not.toContain(MARK);
    if (ends) expect(now.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
  }
});

/** What stands before the coil, what is added, and what stands behind it. */
const TEXTS: [what: string, before: string, added: string, after: string][] = [
  [
    'a coil on one line',
    `coils:\n  -   { name:   A, resistance: 0.5 ohm }   # first\n`,
    `  - ${LINE}\n`,
    REST,
  ],
  [
    'coils key by key, indented by four',
    `coils:\n    - name: A\n      resistance:   0.5 ohm # cold\n`,
    `    - ${KEYS.join('\n      ')}\n`,
    `  # not of the coils\n${REST}`,
  ],
  ['a dash under the key', `coils:\n- name: A\n`, `- ${KEYS.join('\n  ')}\n`, REST],
  ['coils in brackets', `coils: [{ name: A }, { name: B }`, `, ${LINE}`, ` ] # two\n${REST}`],
  ['an empty list', 'coils: ', `[${LINE}]`, `\n${REST}`],
  ['no coils', `# ours\n${REST}`, `coils:\n  - ${LINE}\n`, ''],
  ['a last line without an end', `coils:\n  - { name: A }`, `\n  - ${LINE}\n`, ''],
  [
    'ends of lines of another system',
    `coils:\r\n  - { name: A }\r\n`,
    `  - ${LINE}\r\n`,
    REST.replaceAll('\n', '\r\n'),
  ],
  [
    'text of several lines before it',
    `shop: { name: S, warranty: x }\ncoils:\n  - name: A\n    from: >-\n      a sheet\n      of 2031\n`,
    `  - ${KEYS.join('\n    ')}\n`,
    REST,
  ],
];

test.each(TEXTS)('every other letter of the file stays: %s', (what, before, put, after) => {
  const text = what === 'an empty list' ? `${before}[]${after}` : before + after;
  expect(added(text, '20 degC').now).toBe(before + put + after);
});

test('JSON stays JSON', () => {
  const { now, coils } = added('{"coils": [{"name":  "A"}], "currency": "EUR"}\n', '20 degC');
  expect(now).toMatch(/^\{"coils": \[\{"name": {2}"A"\}, \{.*\}\], "currency": "EUR"\}\n$/);
  expect(Object.keys(JSON.parse(now))).toEqual(['coils', 'currency']);
  expect(coils).toHaveLength(2);
});

test('a list that stands in two places is laid out anew, and its comments stay', () => {
  const { coils, now } = added('# ours\ncoils: &all\n  - { name: A, resistance: 0.5 ohm }\n', '20 degC');
  expect(coils).toHaveLength(2);
  expect(now).toContain('# ours');
});
