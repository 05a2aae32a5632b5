/** `coilfeed new [FILE]`: a commented design to start from, from a few answers where they are given; or a shop's file. */
import { dirname, relative } from 'node:path';
import { createInterface } from 'node:readline/promises';
import type { Problem } from '../design/problems.ts';
import { RANGES } from '../design/ranges.ts';
import { readDesign } from '../design/read.ts';
import type { ShopText } from '../design/shop/beside.ts';
import { readShop } from '../design/shop/read.ts';
import { starter } from '../design/starter.ts';
import { type Asked, firstDesign, LAYOUTS_ASKED, orderFor, shopStarter } from '../shop/first.ts';
import { argsOf } from './args.ts';
import { nameOf, Refusal, readInput, refused, shown, textOf } from './files.ts';
import { wrap } from './help.ts';
import { writeFiles } from './write.ts';

const ASKED = ['cylinders', 'stroke', 'layout', 'order', 'coil', 'shop'] as const;
type Answers = { readonly [K in (typeof ASKED)[number]]?: string | undefined };

/** Writes a design, or a shop's file, to a file or to standard output; returns the exit status. */
export async function run(argv: string[]): Promise<number> {
  const { values, positionals } = argsOf(argv, { one: ASKED, flags: ['ask', 'shop-file', 'force'] });
  if (positionals.length > 1)
    throw new Refusal(`"new" takes one file, not ${positionals.length}: ${positionals.join(', ')}.`);
  const [file] = positionals;
  const given = ASKED.filter((key) => values[key] !== undefined);
  if (values['shop-file'] && (values.ask || given.length > 0))
    throw new Refusal('--shop-file writes a shop’s file and goes with no answers for a design.');
  const text = values['shop-file']
    ? shopStarter()
    : values.ask || given.length > 0
      ? await first(values.ask ? await answered(values) : values, file)
      : starter();
  if (text === null) return 2;
  if (file === undefined || file === '-') {
    process.stdout.write(text);
    return 0;
  }
  await writeFiles([{ path: file, bytes: text }], { force: values.force ?? false });
  const next = values['shop-file']
    ? `Put your parts into it, then: coilfeed shop ${shown(file)}`
    : `Change it to your engine, then: coilfeed size ${shown(file)}`;
  // On standard error, so that standard output only ever holds a design.
  process.stderr.write(`${wrap(`Wrote ${nameOf(file)}. ${next}`)}\n`);
  return 0;
}

/** The design of these answers; null, and every problem said, when they do not go together. */
async function first(answers: Answers, file: string | undefined): Promise<string | null> {
  const made = await attempt(answers, file);
  if (made.ok) return made.text;
  refused(made.problems);
  return null;
}

/** The design of these answers, or what the reader says of it. Throws a `Refusal` for an answer that is none. */
async function attempt(
  answers: Answers,
  file: string | undefined,
): Promise<{ ok: true; text: string } | { ok: false; problems: Problem[] }> {
  const cylinders = whole('cylinders', answers.cylinders ?? '4');
  const stroke = whole('stroke', answers.stroke ?? '4');
  if (stroke !== 2 && stroke !== 4) throw new Refusal('--stroke takes 2 or 4.');
  const layout = (answers.layout ?? LAYOUTS_ASKED[0]).trim();
  if (!LAYOUTS_ASKED.some((one) => one === layout))
    throw new Refusal(`--layout takes ${LAYOUTS_ASKED.join(', ')}, not "${shown(layout)}".`);
  if (answers.coil !== undefined && answers.shop === undefined)
    throw new Refusal('--coil names a coil of a shop’s file: name that with --shop FILE.');
  const shop = answers.shop === undefined ? null : await shopOf(answers.shop);
  const own = shop === null ? null : readShop(shop);
  if (own !== null && !own.ok) return own;
  const coil = answers.coil ?? null;
  const bench = own?.shop.coils?.find(({ name }) => name === coil)?.test_point;
  const asked: Asked = {
    cylinders,
    stroke,
    layout,
    order: answers.order ?? null,
    coil,
    shop: answers.shop === undefined ? null : besideFile(answers.shop, file),
    has: own?.shop ?? null,
    dwell: bench === undefined ? null : `${Number((bench.dwell * 1000).toPrecision(6))} ms`,
  };
  const text = firstDesign(asked);
  const read = readDesign(text, 'the new design', shop ?? undefined);
  return read.ok ? { ok: true, text } : read;
}

const besideFile = (shop: string, file: string | undefined): string =>
  (file === undefined || file === '-' ? shop : relative(dirname(file), shop)).replaceAll('\\', '/');

const shopOf = async (path: string): Promise<ShopText> => ({
  text: textOf(await readInput(path), path),
  file: shown(path),
});

function whole(name: string, text: string): number {
  const { from, to } = RANGES.cylinders;
  const number = /^\d{1,2}$/.test(text.trim()) ? Number(text) : 0;
  if (number < from || number > to)
    throw new Refusal(`--${name} takes a whole number, ${from} to ${to}, not "${shown(text)}".`);
  return number;
}

/** What is wrong with an answer; null when it can be taken. */
type Wrong = (answer: string) => string | null | Promise<string | null>;

/** What a `Refusal` says of an answer, or what the reader says of the first design with it. */
const wrongWith =
  (answers: (answer: string) => Answers): Wrong =>
  async (answer) => {
    try {
      const read = await attempt(answers(answer), undefined);
      return read.ok ? null : read.problems.map(({ found, taken }) => `${found}; ${taken}`).join('. ');
    } catch (error) {
      if (error instanceof Refusal) return error.message.replace(/^--/, '');
      throw error;
    }
  };

/** Asks for what was not given, on the terminal, and again while an answer cannot be taken. */
async function answered(given: Answers): Promise<Answers> {
  if (!process.stdin.isTTY)
    throw new Refusal(
      '--ask needs a terminal; without one give the answers: --cylinders, --layout, --order.',
    );
  const talk = createInterface({ input: process.stdin, output: process.stderr });
  // Without an end of input here the question would never be answered.
  const ended = new Promise<never>((_, reject) => {
    talk.once('close', () => reject(new Refusal('The questions were not answered to the end.')));
  });
  ended.catch(() => undefined);
  const ask = async (
    known: string | undefined,
    what: string,
    preset: string,
    wrong: Wrong,
  ): Promise<string> => {
    if (known !== undefined) return known;
    for (;;) {
      const answer = (await Promise.race([talk.question(`${what} [${preset}]: `), ended])).trim() || preset;
      const why = await wrong(answer);
      if (why === null) return answer;
      process.stderr.write(`${wrap(why)}\n`);
    }
  };
  const coil = (name: string): string | undefined => (name === 'none' ? undefined : name);
  try {
    const cylinders = await ask(
      given.cylinders,
      'Cylinders',
      '4',
      wrongWith((cylinders) => ({ cylinders })),
    );
    const stroke = await ask(
      given.stroke,
      'Stroke, 2 or 4',
      '4',
      wrongWith((stroke) => ({ cylinders, stroke })),
    );
    const engine = { cylinders, stroke };
    const layout = await ask(
      given.layout,
      `Layout: ${LAYOUTS_ASKED.join(', ')}`,
      LAYOUTS_ASKED[0],
      wrongWith((layout) => ({ ...engine, layout })),
    );
    const order = await ask(
      given.order,
      'Firing order',
      orderFor(Number(cylinders)),
      wrongWith((order) => ({ ...engine, layout, order })),
    );
    const all = { ...engine, layout, order };
    const shop = await ask(given.shop, 'Shop’s file, or none', 'none', (answer) =>
      answer === 'none' ? null : wrongWith((shop) => ({ ...all, shop }))(answer),
    );
    if (shop === 'none') return all;
    const name = await ask(given.coil, 'Coil of the shop, or none', 'none', (answer) =>
      wrongWith((one) => ({ ...all, shop, coil: coil(one) }))(answer),
    );
    return { ...all, shop, coil: coil(name) };
  } finally {
    talk.close();
  }
}
