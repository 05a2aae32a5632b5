/** `coilfeed shop FILE`: what is in a shop's own file, and what is doubtful in it. */
import { existsSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { keyText } from '../design/problems.ts';
import { readShop } from '../design/shop/read.ts';
import type { Shop } from '../design/shop/shop.ts';
import { type Doubt, judgeShop } from '../shop/judge.ts';
import { shopJson, shopReport } from '../writers/shop-report.ts';
import { argsOf } from './args.ts';
import { Refusal, readInput, refused, shown, textOf } from './files.ts';

/** A logo that is not there: papers of a kit would be refused for it. */
function logoOf({ shop }: Shop, file: string): Doubt[] {
  const logo = shop?.logo;
  return logo === undefined || file === '-' || existsSync(resolve(dirname(file), logo))
    ? []
    : [{ path: ['shop', 'logo'], part: 'logo', words: `“${logo}” is not beside this file` }];
}

/** Returns the exit status: 0 nothing is doubtful, 1 something is, 2 the file cannot be used. */
export async function run(argv: string[]): Promise<number> {
  const { positionals, values } = argsOf(argv, { flags: ['json'] });
  const [file] = positionals;
  if (file === undefined || positionals.length > 1)
    throw new Refusal('"shop" takes one shop’s file. See "coilfeed help shop".');
  const name = file === '-' ? 'stdin' : shown(file);
  const read = readShop({ text: textOf(await readInput(file), file), file: name });
  if (!read.ok) {
    refused(read.problems);
    return 2;
  }
  const { shop, shelf } = read;
  const doubts = [...judgeShop(shop), ...logoOf(shop, file)].map((doubt) => ({
    ...doubt,
    ...shelf.tree.place(doubt.path),
    key: keyText(doubt.path),
  }));
  process.stdout.write(
    values.json ? `${JSON.stringify(shopJson(shop, doubts), null, 2)}\n` : shopReport(name, shop, doubts),
  );
  return doubts.length === 0 ? 0 : 1;
}
