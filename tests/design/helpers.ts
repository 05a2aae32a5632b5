/** A small design to change, and a reader that expects it to pass. */
import { readdirSync, readFileSync } from 'node:fs';
import { parse, stringify } from 'yaml';
import type { Design } from '../../src/design/design.ts';
import { printProblem } from '../../src/design/problems.ts';
import { readDesign } from '../../src/design/read.ts';
import type { ShopText } from '../../src/design/shop/beside.ts';

const file = (path: string): string => readFileSync(new URL(`../../${path}`, import.meta.url), 'utf8');

/** The file of the shop that the demos name. */
export const SHOP: ShopText = { text: file('workbooks/shop.yaml'), file: 'shop.yaml' };
/** A demo with the shop's file within it, so that it stands for itself. */
export const demo = (name: string): string => read(file(`workbooks/${name}.yaml`), SHOP).text.toString();
/** A demo that says itself what it takes from the shop, and names none. */
export function stated(name: string): string {
  const { shop, kit, ...text } = parse(demo(name));
  if (kit !== undefined) text.kit = { ...kit, terminals: undefined, parts: undefined };
  const partOf = (kind: string, { use, ...beside }: Record<string, string>): object => {
    const {
      name: _,
      stock,
      price,
      from,
      connector,
      largest,
      ...part
    } = shop[kind].find((one: { name: string }) => one.name === use) ?? {};
    return { ...part, ...beside };
  };
  const runs = text.feed.map(({ fuse, relay, ...run }: Record<string, Record<string, string>>) => ({
    ...run,
    ...(fuse && { fuse: partOf('fuses', fuse) }),
    ...(relay && { relay: partOf('relays', relay) }),
  }));
  return stringify({ ...text, coil: partOf('coils', text.coil), feed: runs });
}
/** As the page offers them: whatever lies in the folder. */
export const DEMOS = readdirSync(new URL('../../workbooks', import.meta.url))
  .filter((name) => name.endsWith('.yaml') && name !== 'shop.yaml')
  .map((name) => name.replace('.yaml', ''));

/** The base of the refusals, with pieces of its text replaced. */
export function base(...change: [string, string][]): string {
  let text = file('tests/refusals/base.yaml');
  for (const [find, put] of change) {
    if (!text.includes(find)) throw new Error(`"${find}" is not in the base`);
    text = text.replace(find, () => put);
  }
  return text;
}

/** The design that a text stands for; throws with all problems when it does not pass. */
export const design = (text: string): Design => read(text);

function read(text: string, shop?: ShopText): Design {
  const result = readDesign(text, 'design.yaml', shop);
  if (!result.ok) throw new Error(result.problems.map(printProblem).join('\n'));
  return result.design;
}
