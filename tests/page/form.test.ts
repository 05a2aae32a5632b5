/** The fields of the forms: each that takes a value with a unit names one, so that a bare number can take it. */
import { expect, test } from 'vitest';
import { readValue } from '../../src/basis/read-value.ts';
import { formOf } from '../../src/build/form.ts';

const { fields, schema } = formOf();

test('where the file wants a unit the field names one that it takes', () => {
  // As the schema tells people: `Unit: m, cm, mm, in, ft`, at the value itself or at each value of a table in its place.
  const wanting = Object.entries(fields).filter(([, { help }]) => help.includes('Unit: '));
  expect(wanting.length).toBeGreaterThan(90);
  expect(wanting.filter(([, { unit, us }]) => unit === '' || us === '').map(([place]) => place)).toEqual([]);
});

// By hand: what a technician writes there without thinking.
test.each([
  ['run.length', 'm', 'in'],
  ['run.ambient', 'degC', 'degF'],
  ['run.fuse.rating', 'A', 'A'],
  ['run.relay.coil', 'ohm', 'ohm'],
  ['ignition.dwell', 'ms', 'ms'],
  ['coil.inductance', 'mH', 'mH'],
  ['sweep.to', 'rpm', 'rpm'],
  ['measured.log', 'ms', 'ms'],
  ['kit.strip', 'mm', 'in'],
  ['kit.fuse_at', 'mm', 'in'],
  ['limits.drop', 'V', 'V'],
])('a bare number of %s is in %s, or in %s where one works in US units', (place, unit, us) => {
  expect(fields[place]).toMatchObject({ unit, us });
  expect(readValue(`1 ${unit}`, unit)).toEqual({ ok: true, value: 1 });
});

test('names of fields are words of the trade, not keys', () => {
  expect(schema.properties).toBeDefined();
  // Behind a colon may stand what is taken, as the file spells it.
  const odd = Object.entries(fields).filter(([, { label }]) =>
    /[_{}[\]]|\(empty/.test(label.split(':')[0] ?? ''),
  );
  expect(odd.map(([place, { label }]) => `${place}: ${label}`)).toEqual([]);
});

test('help is text, not the source of a page', () => {
  expect(Object.entries(fields).filter(([, { help }]) => help.includes('`'))).toEqual([]);
  expect(fields['run.length']?.help).toContain('“carries: each”');
});
