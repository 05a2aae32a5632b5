/**
 * How quick the page is, in a real browser: processor time of its process to the first answer, the longest task of its
 * main thread, and the way from a moved slider to the painted answer. Times of the processor, as multiples of those of a
 * bare `node -e 0` in the same run: what other programs take meanwhile slows both.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, CDPSession, Page } from 'playwright-core';

/** Of one load of the page. Milliseconds of processor time, but for `paint`. */
export interface PageSpeed {
  /** `node -e 0`. */
  readonly bare: number;
  /** The browser's process of the page and its workers, from its address to the first answer in the document. */
  readonly first: number;
  /** The same until forms and pictures are drawn, too. */
  readonly whole: number;
  /** The longest task of the main thread while loading, typing into the text of the design, moving sliders. */
  readonly longest: { readonly loading: number; readonly typing: number; readonly sliding: number };
  /** By the label of each slider. */
  readonly sliders: Readonly<Record<string, Move>>;
}

export interface Move {
  /** Work of main thread and worker from the event to the frame in which its answer stands. */
  readonly work: number;
  /** The same by the clock [ms]: long where others use the processor. */
  readonly paint: number;
}

export const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] as number;

/** Processor time of an empty program [ms]. */
export function bareNode(): number {
  const report = `process.on('exit', () => { const { user, system } = process.cpuUsage(); console.log((user + system) / 1e3); })`;
  return Number(spawnSync(process.execPath, ['-e', report], { encoding: 'utf8' }).stdout);
}

/** Runs within the page from its start: marks each input and the frame in which its answer stands, and tells of answers. */
const WATCH = `(() => {
  const waiting = [];
  let moved = 0, last = '0';
  addEventListener('input', () => { moved += 1; performance.mark('moved'); }, true);
  const of = () => document.querySelector('main')?.dataset ?? {};
  const look = () => {
    const { answers = '0', busy } = of();
    if (answers !== last && moved > 0) {
      moved = 0;
      // What is posted within a frame comes after its paint.
      requestAnimationFrame(() => {
        const { port1, port2 } = new MessageChannel();
        port1.onmessage = () => performance.mark('painted');
        port2.postMessage(null);
      });
    }
    last = answers;
    if (busy !== 'false') return;
    for (const one of waiting.filter(({ count }) => Number(answers) >= count)) {
      waiting.splice(waiting.indexOf(one), 1);
      one.done();
    }
  };
  new MutationObserver(look).observe(document, {
    subtree: true, childList: true, attributes: true, attributeFilter: ['data-answers', 'data-busy'],
  });
  globalThis.answered = (count) => new Promise((done) => { waiting.push({ count, done }); look(); });
  globalThis.answers = () => Number(of().answers ?? 0);
})()`;

interface TraceEvent {
  readonly name: string;
  readonly ph: string;
  readonly pid: number;
  readonly tid: number;
  /** Start and length by the clock, and processor time [µs]. */
  readonly ts: number;
  readonly dur?: number;
  readonly tdur?: number;
  readonly args: { readonly name?: string };
}

/** Processor time of the longest task of the main thread [ms], and what each input led to, during some work. */
async function tasks(browser: Browser, page: Page, work: () => Promise<void>): Promise<Tasks> {
  await browser.startTracing(page, { categories: ['toplevel', 'blink.user_timing'] });
  await work();
  const { traceEvents } = JSON.parse((await browser.stopTracing()).toString()) as {
    traceEvents: readonly TraceEvent[];
  };
  const on = (thread: string): TraceEvent[] => {
    const those = new Set(
      traceEvents
        .filter(({ name, args }) => name === 'thread_name' && args.name === thread)
        .map(({ pid, tid }) => `${pid} ${tid}`),
    );
    return traceEvents.filter(({ pid, tid }) => those.has(`${pid} ${tid}`));
  };
  const runs = (events: readonly TraceEvent[]): TraceEvent[] =>
    events.filter(({ ph, name }) => ph === 'X' && name.endsWith('RunTask'));
  const main = on('CrRendererMain');
  const all = [...runs(main), ...runs(on('DedicatedWorker thread'))];
  const spent = ({ tdur = 0 }: TraceEvent): number => tdur / 1000;
  const marks = main
    .filter(({ name }) => name === 'moved' || name === 'painted')
    .sort((a, b) => a.ts - b.ts)
    .filter(({ name }, i, list) => name !== list[i - 1]?.name);
  return {
    longest: Math.max(...runs(main).map(spent)),
    moves: marks.flatMap(({ name, ts: from }, i) => {
      const to = marks[i + 1]?.ts;
      if (name !== 'moved' || to === undefined) return [];
      const within = all.filter(({ ts, dur = 0 }) => ts + dur > from && ts < to);
      return [{ work: sum(within.map(spent)), paint: (to - from) / 1000 }];
    }),
  };
}

interface Tasks {
  readonly longest: number;
  readonly moves: readonly Move[];
}

const sum = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0);
const pause = (ms: number): Promise<void> => new Promise((done) => setTimeout(done, ms));

/** Moves of each slider, in both directions; those before them warm the program up. */
const MOVES = 8;
const WARM = 4;
/** Beyond this everything is drawn, on a machine that is not busy with others [ms]. */
const SETTLED = 3000;

/** Loads the page that stands at `path` and uses it as a person does. Throws where it has no sliders. */
export async function pageSpeed(browser: Browser, path: string): Promise<PageSpeed> {
  const bare = [bareNode()];
  const folder = mkdtempSync(join(tmpdir(), 'coilfeed-empty-'));
  const system = await browser.newBrowserCDPSession();
  const pages: Page[] = [];
  const answered = (page: Page, count: number): Promise<unknown> => page.evaluate(`answered(${count})`);
  /** Behind an empty page, so that the browser's own start does not count. */
  const started = async (): Promise<Page> => {
    const context = await browser.newContext({ viewport: { width: 1440, height: 900 } });
    const page = await context.newPage();
    pages.push(page);
    await page.addInitScript(WATCH);
    await page.goto(`file://${join(folder, 'empty.html')}`);
    await pause(1000);
    return page;
  };
  try {
    writeFileSync(join(folder, 'empty.html'), '<!doctype html><title>empty</title>');
    const counted = await started();
    const before = await processes(system);
    await counted.goto(`file://${path}`, { waitUntil: 'commit' });
    await answered(counted, 1);
    const first = most(before, await processes(system));
    await pause(SETTLED);
    const whole = most(before, await processes(system));
    bare.push(bareNode());
    // Once more, with the tasks told one by one, which costs time itself.
    const page = await started();
    const loading = await tasks(browser, page, async () => {
      await page.goto(`file://${path}`, { waitUntil: 'commit' });
      await answered(page, 1);
      await pause(SETTLED);
    });
    const sliders: Record<string, Move> = {};
    const sliding: number[] = [];
    const moved = await page.locator('.slider input[type=range]').all();
    if (moved.length === 0) throw new Error(`${path}: no slider`);
    for (const [i, slider] of moved.entries()) {
      await slider.focus();
      const move = async (k: number): Promise<void> => {
        const next = Number(await page.evaluate('answers()')) + 1;
        await slider.press(k % 4 < 2 ? 'ArrowRight' : 'ArrowLeft');
        await answered(page, next);
        await pause(60);
      };
      for (let k = 0; k < WARM; k++) await move(k);
      const during = await tasks(browser, page, async () => {
        for (let k = 0; k < MOVES; k++) await move(k);
      });
      sliding.push(during.longest);
      const label = `document.querySelectorAll('.slider input[type=range]')[${i}].labels[0].textContent`;
      if (during.moves.length === 0) throw new Error('no move of a slider was answered');
      sliders[String(await page.evaluate(label))] = {
        work: median(during.moves.map(({ work }) => work)),
        paint: median(during.moves.map(({ paint }) => paint)),
      };
    }
    await page.getByRole('button', { name: 'Text', exact: true }).click();
    await page.locator('#design-text').focus();
    const typing = await tasks(browser, page, async () => {
      for (const letter of '# a word') {
        const next = Number(await page.evaluate('answers()')) + 1;
        await page.keyboard.press(letter);
        await answered(page, next);
      }
      await pause(1000);
    });
    bare.push(bareNode());
    return {
      bare: median(bare),
      first,
      whole,
      longest: { loading: loading.longest, typing: typing.longest, sliding: Math.max(...sliding) },
      sliders,
    };
  } finally {
    for (const page of pages) await page.context().close();
    await system.detach();
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Processor time of each of the browser's processes so far [ms], by its number. */
async function processes(system: CDPSession): Promise<ReadonlyMap<number, number>> {
  const { processInfo } = await system.send('SystemInfo.getProcessInfo');
  return new Map(
    processInfo.flatMap(({ id, type, cpuTime }) =>
      type === 'renderer' ? [[id, cpuTime * 1000] as const] : [],
    ),
  );
}

/** That of the process that worked most: the browser keeps another one ready for the next page. */
const most = (before: ReadonlyMap<number, number>, now: ReadonlyMap<number, number>): number =>
  Math.max(...[...now].map(([id, time]) => time - (before.get(id) ?? 0)));
