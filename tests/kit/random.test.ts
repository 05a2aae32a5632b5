/** Designs that nobody thought of: every conductor is one chain of pieces, and no paper shows a value that is none. */
import { expect, test } from 'vitest';
import { bench } from '../../src/kit/bench.ts';
import { wiringDiagram } from '../../src/kit/diagram.ts';
import { labelSheet } from '../../src/kit/label-sheet.ts';
import { partsList } from '../../src/kit/parts.ts';
import { record } from '../../src/kit/record.ts';
import { cutTable, labelTable, partsTable, reelTable } from '../../src/kit/tables.ts';
import { samples } from '../samples.ts';
import { documentOf } from '../workbook/random-design.ts';
import { straight } from './designs.ts';
import { jobOf } from './job.ts';

const run = (name: string, rest: string): string =>
  `  - { run: ${name}, length: 0.2 m, ambient: 60 degC, insulation: C, gauge: 8 AWG, ${rest} }\n`;

const ODD: [string, string][] = [
  [
    'groups of unlike size, one with a relay',
    straight(4).replace(
      '  - { run: drop,',
      `${run('A', 'carries: [1, 2, 3]')}${run('B', 'carries: [4], relay: { rating: 40 A, pull_in: 6 V }')}  - { run: drop,`,
    ),
  ],
  [
    'a fuse and a relay for each coil',
    straight(4)
      .replace('carries: all\n', 'carries: each\n')
      .replace(/\n {2}- \{ run: drop.*/, ''),
  ],
  [
    'returns of their own for some coils',
    straight(3).replace(
      /return:[\s\S]*/,
      `return:\n${run('r', 'carries: [1, 2]')}${run('q', 'carries: [3]')}`,
    ),
  ],
  ...Array.from({ length: samples(8) }, (_, i): [string, string] => [
    `random design ${i + 1}`,
    JSON.stringify(documentOf(i + 1)),
  ]),
];

test.each(ODD)('%s', async (_, text) => {
  const job = jobOf(text, false);
  const { harness, result } = job;
  result.evaluation.design.wires.forEach((wire, i) => {
    const own = harness.pieces.filter((piece) => piece.wire === i);
    expect(own.length, wire.id).toBeGreaterThan(0);
    for (const [k, piece] of own.slice(1).entries()) expect(piece.from.spot, piece.id).toBe(own[k]?.to.spot);
    if (own.every(({ length }) => length !== null))
      expect(own.reduce((sum, { length }) => sum + (length ?? 0), 0)).toBeCloseTo(wire.length, 12);
  });
  // Every coil is reached from the positive side and leads on to the negative one.
  for (const spot of harness.spots.filter(({ kind }) => kind === 'coil')) {
    const ends = [
      ...harness.pieces.map(({ from, to }) => ({ from: from.spot, to: to.spot })),
      ...harness.links,
    ];
    expect(ends.filter(({ to }) => to === spot).length, spot.id).toBeGreaterThan(0);
    expect(ends.filter(({ from }) => from === spot).length, spot.id).toBeGreaterThan(0);
  }
  expect(partsList(job).length).toBeGreaterThan(5);
  const papers = [
    await wiringDiagram(result),
    bench(job, ''),
    record(job),
    labelSheet(job),
    partsTable(job),
    cutTable(job),
    reelTable(job),
    labelTable(job),
  ];
  for (const paper of papers) expect(paper).not.toMatch(/undefined|NaN|Infinity|\[object|null/);
});
