/** The tree behind a value: its parts give the value, and it says where each of them is from. */
import { expect, test } from 'vitest';
import type { At, Axis } from '../../src/basis/quantity.ts';
import { type Evaluation, evaluate } from '../../src/engine/evaluate.ts';
import { frame } from '../../src/engine/frame.ts';
import { find } from '../../src/explain/find.ts';
import { explain, type Told } from '../../src/explain/tree.ts';
import { QUANTITIES, type QuantityName } from '../../src/model/model.ts';
import { explainReport } from '../../src/writers/explain-report.ts';
import { DEMOS, demo, design } from '../design/helpers.ts';

const v8 = evaluate(design(demo('two-bank-v8')));

/** A few members of each quantity: the first, the last, and one between. */
function someMembers(e: Evaluation, name: QuantityName): At[] {
  const { axes } = frame(name);
  const counts = axes.map((axis: Axis) => e.grid.axes[axis].length);
  if (counts.some((count) => count === 0)) return [];
  return [0, 0.5, 0.999].map((share) =>
    Object.fromEntries(axes.map((axis, k) => [axis, Math.floor(share * (counts[k] as number))])),
  );
}

/** Arithmetic as JavaScript does it: nothing of the engine's own. */
function calculated(formula: string, values: ReadonlyMap<string, number>): number {
  const text = formula
    .replaceAll('^', '**')
    .replace(/\b(MIN|MAX|SQRT|EXP|ABS)\(/g, (_, name: string) => `Math.${name.toLowerCase()}(`)
    .replace(/\bLN\(/g, 'Math.log(')
    .replace(/\bPI\(\)/g, 'Math.PI')
    .replace(/(?<![.\w])-(\w+)\*\*/g, '(-$1)**');
  return new Function(...values.keys(), `return ${text}`)(...values.values());
}

test('the formula as it was worked out, over the values told with it, gives the value: every demo, every quantity', () => {
  let compared = 0;
  const wrong: string[] = [];
  for (const name of DEMOS) {
    const e = evaluate(design(demo(name)));
    for (const id of Object.keys(QUANTITIES) as QuantityName[])
      for (const at of someMembers(e, id)) {
        const told = explain(e, id, at, 1);
        const entering = told.parts.filter(({ role }) => role === 'enters');
        const ids = entering.map((part) => part.id as string);
        // Ranges, words, and two values of one quantity have no arithmetic that a line of JavaScript could do.
        if (told.formula === '' || new Set(ids).size < ids.length || typeof told.value !== 'number') continue;
        if (entering.some(({ count, told: own }) => count !== 1 || typeof own[0]?.value !== 'number'))
          continue;
        if (/MATCH|COUNT|SUM|SMALL|LARGE|MMULT|ISNUMBER|INDEX|[<>=]/.test(told.formula)) continue;
        const found = calculated(
          told.formula,
          new Map(entering.map((part) => [part.id, part.told[0]?.value as number])),
        );
        compared += 1;
        // Twelve digits: the last ones differ by the order of the same operations.
        if (
          !(Math.abs(found - told.value) <= 1e-12 * Math.max(1, Math.abs(told.value)) || found === told.value)
        )
          wrong.push(
            `${name} ${id} ${JSON.stringify(at)}: ${told.formula} is ${found}, told is ${told.value}`,
          );
      }
  }
  expect(wrong).toEqual([]);
  expect(compared).toBeGreaterThan(800);
});

const every = (told: Told): Told[] => [told, ...told.parts.flatMap((part) => part.told.flatMap(every))];

test('every value that no formula works out says where it is from', () => {
  const ends = every(explain(v8, 'least_kept', {})).filter(
    ({ cut, kind }) => cut === null && kind !== 'formula',
  );
  expect(ends.length).toBeGreaterThan(100);
  expect([...new Set(ends.filter(({ source }) => source === '').map(({ id }) => id))]).toEqual([]);
  const of = (id: string) => ends.find((one) => one.id === id)?.source;
  // As the file has it: a length of the main run is stated, the driver's rest as well, the tolerance is not.
  expect(of('wire_length')).toBe('the design, feed[0].length');
  expect(of('coil_ohm_20')).toBe(
    'the shop’s file shop.yaml, coil “sand racer”, from an invented data sheet (coil.resistance)',
  );
});

test('what the design leaves out says why it was taken', () => {
  const { at, name } = find(v8, 'tolerance_ohm', []) as { name: QuantityName; at: At };
  expect(explain(v8, name, at).source).toBe(
    'taken where the design says nothing (tolerance.coil_resistance): arbitrary',
  );
});

test('a tree tells no formula twice', () => {
  const told = every(explain(v8, 'worst_drop', {})).filter(({ formula }) => formula !== '');
  const keys = told.map(({ id, at }) => `${id} ${JSON.stringify(at)}`);
  expect(keys.length).toBeGreaterThan(50);
  expect(new Set(keys).size).toBe(keys.length);
});

test('the ampacity of the main run: its four factors and their sources on one screen', () => {
  const text = explainReport(explain(v8, 'ampacity', { run: 0 }, 3));
  const lines = text.trimEnd().split('\n');
  expect(lines.length).toBeLessThanOrEqual(34);
  expect(Math.max(...lines.map((line) => [...line].length))).toBeLessThanOrEqual(80);
  // By hand: 33 CFR 183.425 table 5 has 90 A and 125 A for 8 and 6 AWG at 125 °C; √((125−60)/(125−30)) = 0.827.
  for (const part of ['90.0 A', '125 A', 'k_Ta = 0.827', 'k_TR = 1', 'k_b = 1', '33 CFR 183.425', 'NFPA 70'])
    expect(text).toContain(part);
});

test.each([
  ['ampacity main', 'ampacity', { run: 0 }],
  ['Main ampacity', 'ampacity', { run: 0 }],
  ['ΔV_max', 'worst_drop', {}],
  ['Drop, worst path', 'worst_drop', {}],
  ['worst_rms_A', 'worst_effective', { wire: 0 }],
  // Coils stand in the order of first firing, 1, 5, 6, 3, behind main and two trunks.
  ['wire_T branch.3', 'wire_T', { wire: 6 }],
  ['peak cruise', 'peak', { speed: 2 }],
  ['coil_energy coil 7 idle', 'coil_energy', { coil: 4, point: 1 }],
])('"%s" is found', (text, name, at) => {
  expect(find(v8, text, [])).toMatchObject({ name, at });
});

test.each([
  [['ampacty'], [], 'Did you mean ampacity'],
  [['ampacity'], ['mian'], 'no run, coil or point "mian". Did you mean "main"?'],
  [['worst_drop'], ['main'], 'worst_drop has no value for "main": it is one value'],
  [['zzz'], [], 'docs/quantities.md lists them all'],
])('%s at %s is refused with what was meant', ([text], at, says) => {
  expect((find(v8, text as string, at) as { wrong: string }).wrong).toContain(says);
});
