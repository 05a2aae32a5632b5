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
  const now = withCoil(text, read.shop, 'bench coil', FOUND, own);
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
