/** What the page remembers: steps to undo, and what survives a reload. */
import { expect, test } from 'vitest';
import { begin, changed, opened, redone, settled, undone } from '../../src/page/state/history.ts';
import { type Box, Storage, type Stored } from '../../src/page/state/storage.ts';

const given = (text: string, file: string) => ({ text, file, shop: null });

test('typing in one place is one step; leaving it begins another', () => {
  let h = begin(given('a', 'a.yaml'));
  h = changed(h, 'ab', 'x');
  h = changed(h, 'abc', 'x');
  expect(undone(h).now.text).toBe('a');
  h = changed(settled(h), 'abcd', 'x');
  h = changed(h, 'other', 'y');
  expect([undone(h).now.text, undone(undone(h)).now.text, undone(undone(undone(h))).now.text]).toEqual([
    'abcd',
    'abc',
    'a',
  ]);
  expect(redone(undone(h)).now.text).toBe('other');
  // A change after undoing leaves nothing to redo; nothing to undo changes nothing.
  expect(changed(undone(h), 'new', 'z').future).toEqual([]);
  expect(undone(begin(given('a', 'x')))).toEqual(begin(given('a', 'x')));
  expect(changed(h, h.now.text, 'y')).toBe(h);
});

test('lines end as they did, whatever a field of the browser or a new layout makes of them', () => {
  const first = begin(given('a: 1\r\nb: 2\r\n', 'a.yaml'));
  const typed = changed(first, 'a: 1\nb: 3\n', 'text');
  expect(typed.now.text).toBe('a: 1\r\nb: 3\r\n');
  expect(changed(typed, 'a: 1\r\nc: 4\nb: 3\r\n', null).now.text).toBe('a: 1\r\nc: 4\r\nb: 3\r\n');
  // The same text is no step, and mixed ends are nobody's rule.
  expect(changed(first, 'a: 1\nb: 2\n', 'text')).toBe(first);
  expect(changed(begin(given('a\r\nb\n', 'a')), 'a\nb\nc\n', null).now.text).toBe('a\nb\nc\n');
});

test('a file that is opened is a step with its own name, and its own origin', () => {
  const first = changed(begin(given('a', 'one.yaml')), 'ab', 'x');
  const shop = { text: 'currency: EUR', file: 'shop.yaml', as: '../shop.yaml' };
  const second = opened(first, { text: 'b', file: 'two.yaml', shop });
  expect(second.now).toEqual({ text: 'b', file: 'two.yaml', shop, origin: 1 });
  expect(changed(second, 'bc', 'x').now.shop).toBe(shop);
  expect(undone(second).now).toEqual({ text: 'ab', file: 'one.yaml', shop: null, origin: 0 });
  // After undo another file is a third one, and not the second again.
  expect(opened(undone(second), given('c', 'three.yaml')).now.origin).toBe(2);
});

function box(): Box & { held: Map<string, string> } {
  const held = new Map<string, string>();
  return {
    held,
    getItem: (key) => held.get(key) ?? null,
    setItem: (key, value) => void held.set(key, value),
    removeItem: (key) => void held.delete(key),
  };
}

const STORED: Stored = {
  text: 'title: x',
  file: 'x.yaml',
  came: { text: 'currency: GBP', file: 'shop.yaml', as: '../shop.yaml' },
  system: 'us',
  look: 'dark',
  snapshot: { text: 'title: y', file: 'y.yaml', shop: { text: 'currency: USD', file: 'other.yaml' } },
  shop: { text: 'currency: EUR', file: 'shop.yaml' },
};

test('what was stored comes back, for the same page only, until it is cleared', () => {
  const held = box();
  new Storage('a', held).save(STORED);
  expect(new Storage('a', held).open()).toEqual({ stored: STORED, offered: null });
  new Storage('a', held).started();
  expect(new Storage('b', held).open()).toEqual({ stored: null, offered: null });
  new Storage('a', held).clear();
  expect(new Storage('a', held).open()).toEqual({ stored: null, offered: null });
  expect(held.held.size).toBe(0);
});

test('the logo comes back, and nothing that is no picture: it stands on papers as it is', () => {
  const held = box();
  const storage = new Storage('a', held);
  const logo = 'data:image/svg+xml;base64,PHN2Zy8+';
  storage.keepLogo(logo);
  storage.save(STORED);
  expect(new Storage('a', held).logo()).toBe(logo);
  expect(new Storage('b', held).logo()).toBe(null);
  const key = [...held.held].find(([, value]) => value === logo)?.[0] as string;
  for (const other of ['', 'x', `${logo}"><script>`, 'data:text/html;base64,PHN2Zy8+', `${logo}\n`])
    expect([other, new Storage('a', held.held.set(key, other) && held).logo()]).toEqual([other, null]);
  storage.keepLogo(logo);
  storage.clear();
  expect(held.held.size).toBe(0);
  // Put away with the shop's file.
  storage.keepLogo(logo);
  storage.keepLogo(null);
  expect(storage.logo()).toBe(null);
});

test('what is too long to be read again is not stored, and what was stays', () => {
  const held = box();
  new Storage('a', held).save(STORED);
  const long = 'x'.repeat(1024 * 1024 + 1);
  expect(new Storage('a', held).save({ ...STORED, text: long })).toBe(false);
  const came = { text: 'y'.repeat(1024 * 1024), file: 'shop.yaml' };
  const much = { ...STORED, text: came.text, came, shop: came, snapshot: { ...came, shop: came } };
  expect(new Storage('a', held).save(much)).toBe(false);
  expect(new Storage('a', held).open().stored).toEqual(STORED);
});

test('a start that did not come to its end is offered, not repeated', () => {
  const held = box();
  new Storage('a', held).save(STORED);
  new Storage('a', held).open();
  const next = new Storage('a', held);
  expect(next.open()).toEqual({ stored: null, offered: STORED });
  next.started();
  expect(new Storage('a', held).open().stored).toEqual(STORED);
});

test.each(['', '{', 'null', '7', '[]', '{"text":1}', `{"text":"${'x'.repeat(1024 * 1024 + 1)}"}`])(
  'what cannot be read is left out: %.20s',
  (raw) => {
    const held = box();
    new Storage('a', held).save(STORED);
    for (const key of held.held.keys()) held.held.set(key, raw);
    expect(new Storage('a', held).open()).toEqual({ stored: null, offered: null });
  },
);

test('strange settings fall back, and a browser without storage does no harm', () => {
  const held = box();
  new Storage('a', held).save(STORED);
  for (const key of held.held.keys())
    held.held.set(key, '{"text":"t","system":"furlongs","look":3,"file":{},"snapshot":{"text":7}}');
  expect(new Storage('a', held).open().stored).toEqual({
    text: 't',
    file: 'design.yaml',
    came: null,
    system: 'design',
    look: 'auto',
    snapshot: null,
    shop: null,
  });

  const refuses = (): never => {
    throw new Error('denied');
  };
  for (const none of [null, { getItem: refuses, setItem: refuses, removeItem: refuses }]) {
    const storage = new Storage('a', none);
    storage.save(STORED);
    storage.started();
    storage.clear();
    expect(storage.open()).toEqual({ stored: null, offered: null });
    storage.keepLogo('data:image/png;base64,AA==');
    expect(storage.logo()).toBe(null);
  }
});
