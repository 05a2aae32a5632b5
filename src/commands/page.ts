/** `coilfeed page [DESIGN] --out FILE.html`: the whole tool as one file for a browser, with a design inside. */
import { readFileSync } from 'node:fs';
import { basename } from 'node:path';
import { fileName } from '../design/shop/beside.ts';
import { argsOf } from './args.ts';
import { nameOf, Refusal } from './files.ts';
import { type Given, readGiven } from './given.ts';
import { writeFiles } from './write.ts';

/** The build puts the page beside the tool, and commands into a folder below it. */
const PAGE = new URL('../page.html', import.meta.url);

/** Where the page looks for its design. */
const START = '<script type="application/json" id="start">null</script>';

/** Returns the exit status: 0 when the page was written, 2 when the design cannot be used. */
export async function run(argv: string[]): Promise<number> {
  const { positionals, values } = argsOf(argv, { one: ['shop', 'out'], flags: ['force'] });
  const [file] = positionals;
  if (positionals.length > 1)
    throw new Refusal(`"page" takes one design, not ${positionals.length}. See "coilfeed help page".`);
  const { out, force = false } = values;
  if (out === undefined) throw new Refusal('Name the file to write: --out bench.html.');
  if (!/\.html?$/i.test(out))
    throw new Refusal(`A browser would not open "${out}" as a page: the name must end in .html.`);
  let page = readFileSync(PAGE, 'utf8');
  if (file !== undefined) {
    const given = await readGiven(file, { shop: values.shop });
    if (given === null) return 2;
    const name = file === '-' ? 'design.yaml' : basename(file).replace(/\.(xlsx|ods)$/i, '.yaml');
    page = withDesign(page, name, given);
  }
  await writeFiles([{ path: out, bytes: page }], { force, inputs: file === undefined ? [] : [file] });
  process.stderr.write(`Wrote ${nameOf(out)}. Open it in a browser; nothing leaves the machine.\n`);
  return 0;
}

/** The page with a design inside, and with the shop's file beside it, as data that no browser takes for markup. */
function withDesign(page: string, name: string, { design, written, shop }: Given): string {
  const at = page.indexOf(START);
  if (at < 0) throw new Error('the page of this build has no place for a design');
  const start = {
    file: name,
    text: written ?? design.text.toString(),
    shop: shop === undefined ? null : { ...shop, file: fileName(shop.file) },
  };
  const data = JSON.stringify(start).replaceAll('<', '\\u003c');
  return page.slice(0, at) + START.replace('null', () => data) + page.slice(at + START.length);
}
