/** Tables are declared once: no label is typed again beside its record, and no number is shown that is no quantity. */
import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import type { At, Quantity } from '../../src/basis/quantity.ts';
import type { Evaluation } from '../../src/engine/evaluate.ts';
import { QUANTITIES, type QuantityName, SUBJECTS } from '../../src/model/model.ts';
import { checked } from '../../src/readings/check.ts';
import { compare } from '../../src/readings/compare.ts';
import { run } from '../../src/run.ts';
import { traceOf } from '../../src/transient/trace.ts';
import { fieldsOf, keyOf, quantityOf } from '../../src/views/view.ts';
import { VIEWS } from '../../src/views/views.ts';
import { checkJson } from '../../src/writers/check-json.ts';
import { compareJson } from '../../src/writers/compare-json.ts';
import { toJson } from '../../src/writers/json.ts';
import { report } from '../../src/writers/report.ts';
import { traceJson } from '../../src/writers/trace-json.ts';
import { design } from '../design/helpers.ts';
import { caseText } from '../readings/cases.ts';
import { demoDesign } from '../workbook/books.ts';

/** Quantities of readings, which no result shows. */
const asked = new Set<string>(Object.keys(SUBJECTS.readings));
const all = Object.entries(QUANTITIES) as [QuantityName, Quantity][];

test('no label of a quantity is typed where results are shown', () => {
  // A single word may be the name of many things; from two words on it is the label.
  const labels = new Map(
    all
      .flatMap(([name, q]) => [q.label, q.short].map((text) => [text?.toLowerCase(), name] as const))
      .filter(([text]) => text?.includes(' ')),
  );
  const src = new URL('../../src/', import.meta.url);
  const typed = ['writers', 'page', 'views', 'readings', 'docs', 'kit', 'remedies'].flatMap((folder) =>
    readdirSync(new URL(folder, src), { recursive: true, encoding: 'utf8' })
      .filter((file) => /\.tsx?$/.test(file))
      .flatMap((file) => {
        const text = readFileSync(new URL(`${folder}/${file}`, src), 'utf8');
        return [...text.matchAll(/(['"`])((?:(?!\1).)+)\1|>\s*([^<>{}]+?)\s*</g)]
          .map((match) => (match[2] ?? match[3] ?? '').toLowerCase())
          .filter((found) => labels.has(found))
          .map((found) => `${folder}/${file}: "${found}" is the label of ${labels.get(found)}`);
      }),
  );
  expect(typed).toEqual([]);
});

test('no key stands twice in a row of a view, and every quantity that is read has a label that fits a column', () => {
  for (const [id, view] of Object.entries(VIEWS)) {
    const keys = fieldsOf(view).map(keyOf);
    expect(
      keys.filter((key, i) => keys.indexOf(key) !== i),
      id,
    ).toEqual([]);
    // A word of more than 14 letters does not fit between the others in 80 columns.
    for (const field of view.read) {
      const { label, short = label }: Quantity = QUANTITIES[quantityOf(field)];
      expect(short.length, `${id}: ${field}`).toBeLessThanOrEqual(32);
      expect(
        Math.max(...short.split(' ').map(({ length }) => length)),
        `${id}: ${field}`,
      ).toBeLessThanOrEqual(14);
    }
  }
});

/** Every number that a quantity has somewhere in an evaluation, and every count of what the design has several of. */
function numbers(e: Evaluation, readings = false): Set<number> {
  const found = new Set<number>();
  for (const [name, { per = [], across }] of all.filter(([name]) => readings || !asked.has(name))) {
    const members = [...per, ...(across === undefined ? [] : [across])].reduce<At[]>(
      (some, axis) => some.flatMap((at) => e.grid.axes[axis].map((_, i) => ({ ...at, [axis]: i }))),
      [{}],
    );
    for (const at of members) {
      const value = e.value(name, at);
      if (typeof value === 'number') found.add(value);
    }
  }
  for (const members of Object.values(e.grid.axes)) found.add(members.length);
  return found;
}

function leaves(value: unknown, path = ''): [string, number][] {
  if (typeof value === 'number') return [[path, value]];
  if (value === null || typeof value !== 'object') return [];
  return Object.entries(value).flatMap(([key, inside]) => leaves(inside, `${path}.${key}`));
}

test.each(['hill-climb-six', 'two-bank-v8'])(
  '%s: every number of the results is that of a quantity',
  (name) => {
    const result = run(demoDesign(name));
    const known = numbers(result.evaluation);
    const stray = (json: unknown): [string, number][] =>
      // A margin is the distance of two quantities as a share, made by the sheet of the rules. The exact currents are the
      // only physics that is code: they are held against the trace in tests/readings/gain.test.ts. Prices: tests/shop/prices.test.ts.
      leaves(json).filter(
        ([path, value]) => !/\.margin$|\.exact\.|^\.shop\./.test(path) && !known.has(value),
      );
    const json = toJson(result);
    expect(leaves(json).length).toBeGreaterThan(300);
    expect(stray(json)).toEqual([]);
    const side = { name: 'A', title: 'A', result };
    expect(stray(compareJson(compare(side, side)))).toEqual([]);
    // The test sees a sum that is made beside the model.
    expect(stray({ sum: (json.totals.drop_V as number) + (json.totals.copper_kg as number) })).toHaveLength(
      1,
    );
  },
);

test.each(['hill-climb-six', 'two-bank-v8'])(
  '%s: every number of a trace is that of a quantity or exact',
  (name) => {
    const { evaluation } = run(demoDesign(name));
    const known = numbers(evaluation);
    const json = traceJson(traceOf(evaluation, 0), [...evaluation.design.wires.keys()]);
    expect(leaves(json).length).toBeGreaterThan(50);
    // What the exact currents give stands under `exact`, or is the lowest supply, which no closed form has.
    const stray = leaves(json).filter(
      ([path, value]) => !/\.exact$|\.lowest_supply_V$/.test(path) && !known.has(value),
    );
    expect(stray).toEqual([]);
  },
);

test('every number of a check is that of a quantity, was read, or was inferred', () => {
  const found = checked(run(design(caseText('corroded-return'))));
  const known = numbers(found.result.evaluation, true);
  const { check } = checkJson(found);
  expect(leaves(check).length).toBeGreaterThan(300);
  // Read by a person; inferred from what was read, by the exact currents; a range that the error of the instrument widens.
  const apart =
    /^\.(mend|causes|suspects|unseen|nothing_wrong_share|next)|^\.readings\.\d+\.(value|ratio|excess_ohm|low|high)$/;
  expect(leaves(check).filter(([path, value]) => !apart.test(path) && !known.has(value))).toEqual([]);
});

test.each(['hill-climb-six', 'two-bank-v8'])('%s: the report of everything keeps to 80 columns', (name) => {
  for (const units of ['metric', 'us', 'both'] as const) {
    const lines = report(run({ ...demoDesign(name), units }), { all: true }).split('\n');
    expect(
      lines.filter((line) => [...line].length > 80),
      units,
    ).toEqual([]);
  }
});
