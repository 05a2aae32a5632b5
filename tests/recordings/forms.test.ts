/** Forms of export: each comes out right, or is refused with the reason. None is taken for something else in silence. */
import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import { FORMS } from './forms.ts';
import { type Judged, judged } from './judge.ts';
import { END, START, table } from './page.ts';

/** Of the task: 2 %. */
const TOLERANCE = 0.02;
const PAGE = 'docs/recordings.md';

const all: Judged[] = [];
beforeAll(async () => {
  for (const form of FORMS) all.push(await judged(form));
});

test('there are forty forms and more, of different names', () => {
  expect(FORMS.length).toBeGreaterThanOrEqual(40);
  expect(new Set(FORMS.map(({ name }) => name)).size).toBe(FORMS.length);
});

describe('each form', () => {
  test.each(FORMS.map(({ name }) => name))('%s', (name) => {
    const { form, why, measured, contrary, off } = all.find((one) => one.form.name === name) as Judged;
    if (form.refused) {
      expect(why ?? 'taken').toMatch(form.refused);
      return;
    }
    expect(why).toBeNull();
    if (form.first) {
      expect(contrary[0]).toMatch(form.first);
      return;
    }
    expect(contrary).toEqual([]);
    if (!form.clipped) expect(Math.abs(off.peak)).toBeLessThan(TOLERANCE);
    expect(Math.abs(off.dwell)).toBeLessThan(TOLERANCE);
    expect(Math.abs(off.inductance)).toBeLessThan(TOLERANCE);
    // How much the curve bends is all that tells the resistance: in much noise that is less sure, and it says so.
    const sure = (measured?.resistance.within ?? 0) / (measured?.resistance.value ?? 1);
    expect(Math.abs(off.resistance)).toBeLessThan(Math.max(TOLERANCE, sure));
    expect(measured?.knee?.kind === 'clipped').toBe(form.clipped === true);
    if (form.notes) expect(measured?.notes.join(' ')).toMatch(form.notes);
  });
});

test('docs/recordings.md tells what was measured; when stale: npx vitest run tests/recordings -u', async () => {
  const page = readFileSync(PAGE, 'utf8');
  const [before = '', rest = ''] = page.split(START);
  const after = rest.split(END)[1] ?? '';
  const made = `${before}${START}\n\n${table(all)}\n\n${END}${after}`;
  await expect(made).toMatchFileSnapshot(`../../${PAGE}`);
});
