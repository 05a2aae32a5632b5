/** What the page's fields show where the design leaves them out: the value of the shop's part before the general one. */
import { expect, test } from 'vitest';
import type { ShopText } from '../../src/design/shop/beside.ts';
import { readTree } from '../../src/design/tree.ts';
import { takenAt } from '../../src/page/form/taken.ts';
import { pathOf } from '../../src/page/place.ts';
import type { View } from '../../src/page/protocol.ts';
import { demo, design, SHOP } from '../design/helpers.ts';

/** The demo with its file beside it, as a person has both open, and what was answered for it. */
const text = demo('hill-climb-six');
const root = { ...(readTree(text, '').value as object), shop: 'shop.yaml' };
const view = { design: design(text), shown: {} } as unknown as View;
const at = (key: string, of: object = root) => takenAt(of, pathOf(key), SHOP, view, false);

// As they stand in workbooks/shop.yaml.
test.each([
  ['coil.resistance', '0.42 ohm', 'hill climb'],
  ['coil.driver_drop', '1.2 V', 'hill climb'],
  ['feed[0].relay.rating', '50 A', 'power 50'],
  ['feed[0].relay.contact', '3 mohm', 'power 50'],
  ['feed[0].relay.suppression', 'resistor', 'power 50'],
])('%s: %s of “%s”', (key, value, name) => {
  expect(at(key)).toEqual({ value, why: `“${name}” of the shop’s file`, part: true });
  // The same where the file stands within the design.
  expect(takenAt(readTree(text, '').value, pathOf(key), null, view, false)?.value).toBe(value);
});

test('what the part does not say is what was taken for it, and what a field beside the name drops is nobody’s', () => {
  // 16 V is what a relay's coil of the 12 V class takes.
  expect(at('feed[0].relay.coil_max')).toMatchObject({ value: '16 V', part: false });
  const other = { ...root, coil: { use: 'hill climb', peak: '9 A' } };
  expect(at('coil.inductance', other)).toBeNull();
  expect(at('coil.resistance', other)?.value).toBe('0.42 ohm');
});

test('a file that is opened takes the place of the one within the design, as for its answer', () => {
  const own = readTree(text, '').value;
  const other = { ...SHOP, text: SHOP.text.replace('resistance: 0.42 ohm', 'resistance: 0.61 ohm') };
  const found = (shop: ShopText) => takenAt(own, ['coil', 'resistance'], shop, view, false)?.value;
  expect(found(other)).toBe('0.61 ohm');
  // The one of a design that names it says nothing of one that has its own.
  expect(found({ ...other, as: 'shop.yaml' })).toBe('0.42 ohm');
});

test('no part, none of that name, the name itself: nothing of the shop', () => {
  expect(at('feed[1].fuse.rating')).toBeNull();
  expect(at('coil.resistance', { ...root, coil: { use: 'hill' } })).toBeNull();
  expect(at('coil.use')).toBeNull();
});
