/** `coilfeed page [DESIGN] --out FILE.html`: the whole tool as one file for a browser, with a design inside. */
import { readFileSync } from 'node:fs';
import { basename } from 'node:path';
import { argsOf } from './args.ts';
import { nameOf, Refusal } from './files.ts';
import { readGiven } from './given.ts';
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
    const name = file === '-' ? 'design.yaml' : basename(file).replace(/\.xlsx$/i, '.yaml');
    page = withDesign(page, name, given.design.text.toString());
  }
  await writeFiles([{ path: out, bytes: page }], { force, inputs: file === undefined ? [] : [file] });
  process.stderr.write(`Wrote ${nameOf(out)}. Open it in a browser; nothing leaves the machine.\n`);
  return 0;
}

/** The page with a design inside, as data that no browser takes for markup. */
function withDesign(page: string, name: string, text: string): string {
  const at = page.indexOf(START);
  if (at < 0) throw new Error('the page of this build has no place for a design');
  const data = JSON.stringify({ name, text }).replaceAll('<', '\\u003c');
  return page.slice(0, at) + START.replace('null', () => data) + page.slice(at + START.length);
}
