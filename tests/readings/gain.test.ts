/** What the second feed gives: the sentence for a customer, the exact currents behind it, and the page to print. */
import { execFileSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { drawn } from '../../src/commands/pictures.ts';
import { comparison } from '../../src/kit/comparison.ts';
import type { Picture } from '../../src/pictures/chart.ts';
import { energyPicture } from '../../src/pictures/speed.ts';
import { speedLines } from '../../src/pictures/speed-lines.ts';
import { compare } from '../../src/readings/compare.ts';
import { exactOf } from '../../src/readings/exact.ts';
import { type Gained, gainOf } from '../../src/readings/gain.ts';
import { run } from '../../src/run.ts';
import { traceOf } from '../../src/transient/trace.ts';
import { compareReport } from '../../src/writers/compare-report.ts';
import { emptyFolder } from '../cli/tool.ts';
import { demo, design } from '../design/helpers.ts';
import { useBrowser } from '../peers/chromium.ts';
import { describeWithPeer, peer } from '../peers/peer.ts';

/** A point of which only what the sentence needs is known: name, rpm, supply, energies [mJ]. */
const point = (name: string, rpm: number, volts: number, a: number, b: number): Gained =>
  ({
    name,
    rpm,
    volts,
    exact: [a, b].map((millijoules) => ({ energy: millijoules / 1e3 })),
  }) as unknown as Gained;

test('the sentence: the highest speed, then the lowest supply', () => {
  // 228/171 = 1.333; 12.1/13.5 = 0.896.
  const [cranking, idle] = [point('cranking', 200, 9.2, 13.5, 12.1), point('idle', 850, 13.9, 200, 230)];
  const limiter = point('limiter', 7000, 14.2, 171, 228);
  expect(gainOf([cranking, idle, limiter])).toBe(
    'At limiter, 7000 rpm, the weakest coil gets 228 mJ in place of 171 mJ, 33 % more; at cranking, 200 rpm, 12.1 mJ in ' +
      'place of 13.5 mJ, 10 % less.',
  );
  expect(gainOf([point('idle', 850, 14, 100, 100.2)])).toBe(
    'At idle, 850 rpm, the weakest coil gets 100 mJ, as much as before.',
  );
  expect(gainOf([])).toBeNull();
});

const thin = demo('two-bank-v8').replace(/gauge: auto/g, 'gauge: 1 mm2');
const sided = (name: string, text: string, title?: string) => {
  const d = design(text);
  return { name, title: title ?? d.title, result: run(title === undefined ? d : { ...d, title }) };
};

test('a thin feed draws less by the exact currents, which are those of the trace', () => {
  const [a, b] = [
    sided('A', demo('pair-four').replace(/gauge: auto/g, 'gauge: 1 mm2')),
    sided('B', demo('pair-four')),
  ];
  const found = compare(a, b);
  for (const { exact, name } of found.points) {
    const [thinner, own] = exact;
    expect(thinner?.average).toBeLessThan(own?.average as number);
    expect(thinner?.peak).toBeLessThan(own?.peak as number);
    const trace = traceOf(
      b.result.evaluation,
      b.result.evaluation.design.points.findIndex((p) => p.name === name),
    );
    // Its first conductor carries all coils; the sums are taken in another order.
    expect(own?.average).toBeCloseTo(trace.wires[0]?.average.exact as number, 12);
    expect(own?.energy).toBe(Math.min(...trace.coils.map(({ energy }) => energy.exact)));
    const heat = trace.wires.reduce(
      (sum, { effective }, i) => sum + (trace.circuit.wires[i]?.ohm as number) * effective.exact ** 2,
      0,
    );
    expect(own?.heat).toBeCloseTo(heat, 12);
  }
  const text = compareReport(found);
  expect(text).toContain('the weakest coil gets');
  expect(text).toContain('At limiter, by the exact currents');
});

test('a coil of which only a peak is known has no exact currents, and no sentence', () => {
  const bound = demo('pair-four').replace('use: van pair', 'use: van pair, peak: 10 A');
  const { evaluation } = run(design(bound));
  expect(exactOf(evaluation, 0)).toBeNull();
  expect(compareReport(compare(sided('A', bound), sided('B', bound)))).not.toContain('exact');
});

describeWithPeer('chromium', 'the page for a customer', () => {
  const browser = useBrowser();
  test.runIf(peer('pdftotext') !== null || process.env.CI)(
    'is one page on A4 and on Letter, also with long names and many findings [needs pdftotext]',
    { timeout: 300_000 },
    async () => {
      const long =
        'A title of a design that is as long as people make them when they want to say it all at once';
      const c = compare(sided('A', thin, long), sided('B', demo('two-bank-v8'), long));
      const lines = c.sides.map(({ name, result }) => speedLines(result.evaluation, name, true));
      const [first, second] = lines;
      if (!first || !second) throw new Error('no sweep');
      const [svg] = await drawn(energyPicture([first, second]) as Picture, ['svg']);
      const html = comparison(c, new TextDecoder().decode(svg?.bytes).replace(/^<\?xml[^>]*>\s*/, ''));
      const page = await browser().newPage();
      await page.setContent(html);
      for (const format of ['A4', 'Letter'] as const) {
        const pdf = join(emptyFolder(), 'page.pdf');
        writeFileSync(pdf, await page.pdf({ format }));
        const text = execFileSync('pdftotext', [pdf, '-'], { encoding: 'utf8' });
        // A form feed ends each page.
        expect(text.split('\f').filter((part) => part.trim() !== '')).toHaveLength(1);
        expect(text.replace(/\s+/g, ' ')).toContain('the weakest coil gets');
      }
      await page.close();
    },
  );
});
