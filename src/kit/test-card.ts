/**
 * The test card: what to measure on the finished vehicle, where, and what is acceptable there. One page, to be filled
 * in: what tells most comes first, and the meter before the scope.
 */
import { printValue } from '../basis/print.ts';
import type { At } from '../basis/quantity.ts';
import type { Evaluation } from '../engine/evaluate.ts';
import { SPREADS } from '../model/readings.ts';
import { escaped } from '../pictures/elements.ts';
import { isWorth } from '../readings/card.ts';
import { atPosts, type Expected, quantityOf, type Where } from '../readings/expected.ts';
import { acceptable } from '../readings/judge.ts';
import { instrumentWords, probesOf, subjectOf } from '../readings/places.ts';
import { fill, filled } from './fill.ts';
import { document, name, opening, table } from './html.ts';
import type { Job } from './job.ts';
import { warranty } from './shop-block.ts';
import { blank, kitValue, modelValue } from './values.ts';
import type { Words } from './words.ts';

const STYLE = `
@page{margin:10mm 12mm 13mm}
body{font-size:8.5pt;line-height:1.25}
h1{font-size:13pt}
h2{font-size:10pt;margin:2mm 0 1mm}
ul{padding-left:5mm}
li{margin-bottom:.4mm}
table{font-size:8pt;line-height:1.15;margin:.5mm 0 1.5mm}
th,td{padding:.5mm 1mm}
.r{white-space:nowrap}
.write td{height:7mm}
`;

/** Where a person reads: at the posts while cranking, then at idle, then at a speed below the fastest. */
export interface Stops {
  readonly cranking: number | null;
  /** Nobody holds an engine at its limiter for a reading. */
  readonly running: readonly number[];
}

export function stopsOf({ design: { points } }: Evaluation): Stops {
  const bySpeed = [...points.keys()].sort((a, b) => (points[a]?.rpm ?? 0) - (points[b]?.rpm ?? 0));
  const cranking = bySpeed.find((point) => points[point]?.name === 'cranking') ?? null;
  const others = bySpeed.filter((point) => point !== cranking);
  // The fastest one is left out where there is another.
  const held = others.length > 1 ? others.slice(0, -1) : others;
  const [idle, fastest] = [held[0], held.at(-1)];
  return { cranking, running: [...new Set([fastest, idle])].filter((point) => point !== undefined) };
}

/** A page. The evaluation must hold the readings. */
export function testCard(job: Job, words: Words): string {
  const { evaluation: e } = job.result;
  const { cranking, running } = stopsOf(e);
  const [work] = running;
  const body = [
    opening('Test card', job),
    `<ul>${filled(words.card, job)
      .map((line) => `<li>${line}</li>`)
      .join('')}</ul>`,
    '<h2>The feed as a whole</h2>',
    shared(job, cranking, running),
    ...(work === undefined ? [] : [each(job, work)]),
    `<p class="about">${fill(ABOUT, job)} ${instrumentsOf(e)}</p>`,
    table(
      ['Vehicle', 'Serial number', 'Meter', 'Clamp', 'Read by', 'Date'],
      [['', '', '', '', '', '']],
      [],
      'write',
    ),
    warranty(job),
  ].join('\n');
  return document({ title: 'Test card', job, body, style: STYLE });
}

const ABOUT =
  'A meter shows the average, a scope the peak at the instant of a spark: use the row of your instrument. The design allows {drop_limit} and loses {worst_drop} at the instant of a spark on the worst path; a meter shows less. Drop too high: poor joint, wire too long or too thin. Current outside its range: another coil, supply or dwell. † Only where this ground carries nothing but the coils; with starter or alternator current on it, leave the row out.';

/** How good the instruments are that the ranges count. */
function instrumentsOf({ design: { instruments } }: Evaluation): string {
  const good = (sense: 'meter' | 'clamp' | 'scope', unit: string): string => {
    const { share, digits, least } = instruments[sense];
    const parts = [
      ...(share > 0 ? [printValue(share, '1', '%', true)] : []),
      ...(digits > 0 ? [`${digits} digit${digits === 1 ? '' : 's'}`] : []),
      ...(least > 0 ? [printValue(least, unit, unit, true)] : []),
    ];
    return `${sense} <span data-made="">${escaped(parts.join(' + ').replaceAll(' ', '\u00a0'))}</span>`;
  };
  return `Ranges count the tolerances of the parts and instruments as good as these: ${good('meter', 'V')}; ${good('clamp', 'A')}; ${good('scope', 'V')}.`;
}

const speed = (e: Evaluation, point: number): string =>
  `${name(e.design.points[point]?.name ?? '')}, ${modelValue(e, 'point_rpm', { point })}`;

const at = (where: Partial<Where> & Pick<Where, 'what' | 'instrument'>): Where => ({
  wire: null,
  coil: null,
  point: null,
  ...where,
});

/** Supply, current and drops of what the coils share: a row for each place, both speeds beside each other. */
function shared(job: Job, cranking: number | null, running: readonly number[]): string {
  const { evaluation: e } = job.result;
  const all = e.design.wires.flatMap(({ coils }, wire) => (coils.length > 1 ? [wire] : []));
  const [first] = all;
  const posts = at({ what: 'supply', instrument: 'meter' });
  const places = [
    posts,
    ...(first === undefined ? [] : [at({ what: 'current', instrument: 'clamp_average', wire: first })]),
    ...all.map((wire) => at({ what: 'drop', instrument: 'meter', wire })),
    ...(first === undefined ? [] : [at({ what: 'drop', instrument: 'scope', wire: first })]),
  ];
  const heads = running.flatMap((point) => [speed(e, point), 'from – to', 'measured']);
  const line = (where: Where): string[] => [
    `${name(subjectOf(e.design, where))}${isReturn(e, where) ? ' †' : ''}<br>${instrumentWords(where)}`,
    name(probesOf(e.design, where)),
    ...running.flatMap((point) => [...reading(job, { ...where, point }), '']),
  ];
  const rows = places.map(line).filter((row) => row.some((cell, i) => i > 1 && cell !== '' && cell !== NONE));
  return `${cranking === null ? '' : crank(job, { ...posts, point: cranking })}${marked(['At, with', 'Probes', ...heads], rows)}`;
}

const crank = (job: Job, where: Where): string =>
  `<p>Battery posts, ${speed(job.result.evaluation, where.point as number)}: ${reading(job, where).join(', good: ')}, measured ${blank}</p>`;

const NONE = '–';

/** A table whose headings are markup already. */
const marked = (heads: readonly string[], rows: readonly (readonly string[])[]): string =>
  heads.reduce(
    (html, head, i) => html.replace(`<th>#${i}#</th>`, `<th>${head}</th>`),
    table(
      heads.map((_, i) => `#${i}#`),
      rows,
    ),
  );

/** Expected, and the range in which it is good; dashes where the instrument does not show enough of it. */
function reading(job: Job, where: Where): string[] {
  const { evaluation: e } = job.result;
  const row = acceptable(e, where);
  return isWorth(e.design, row) ? [expected(e, row), range(job, row)] : [NONE, NONE];
}

/** A ground that others may share: it carries several coils and ends at the battery. */
const isReturn = ({ design }: Evaluation, { what, wire }: Where): boolean =>
  what === 'drop' && wire !== null && design.runs[design.wires[wire]?.run ?? -1]?.side === 'return';

/** Wires and current of each coil, a row for each, as far as an instrument shows enough of them; nothing where it shows nothing. */
function each(job: Job, point: number): string {
  const { evaluation: e } = job.result;
  const { wires, runs, coils } = e.design;
  const own = (coil: number, side: string): number[] =>
    wires.flatMap(({ coils: all, run }, wire) =>
      all.length === 1 && all[0] === coil && runs[run]?.side === side ? [wire] : [],
    );
  const drops = (['feed', 'return'] as const).map((side) => {
    const most = Math.max(...coils.map((_, coil) => own(coil, side).length));
    return Array.from({ length: most }, (_, n) => ({ side, n }));
  });
  const columns = drops.flat();
  const order = coils.map((_, coil) => coil).sort((a, b) => rank(coils[a]?.id) - rank(coils[b]?.id));
  const current = (coil: number): string[] =>
    reading(job, at({ what: 'current', instrument: 'clamp_average', coil, point }));
  const drop = (coil: number, { side, n }: (typeof columns)[number]): string[] => {
    const wire = own(coil, side)[n];
    return wire === undefined
      ? [NONE, NONE]
      : reading(job, at({ what: 'drop', instrument: 'meter', wire, point }));
  };
  const title = ({ side, n }: (typeof columns)[number]): string =>
    `${name(runs[wires[own(0, side)[n] ?? -1]?.run ?? -1]?.name ?? side)}<br>drop`;
  const shown = [
    { title: 'Current', cells: order.map(current) },
    ...columns.map((column) => ({
      title: title(column),
      cells: order.map((coil) => drop(coil, column)),
    })),
  ].filter(({ cells }) => cells.some(([cell]) => cell !== NONE));
  if (shown.length === 0) return '';
  return `<h2>Each coil at ${speed(e, point)}</h2>${marked(
    ['Coil', ...shown.flatMap((column) => [column.title, 'from – to', 'measured'])],
    order.map((coil, i) => [
      name(`coil ${coils[coil]?.id}`),
      ...shown.flatMap(({ cells }) => [...(cells[i] as string[]), '']),
    ]),
  )}`;
}

const rank = (id: string | undefined): number => Number.parseInt(id ?? '', 10) || 0;

/** What is expected, as the quantity of the model that it is. */
function expected(e: Evaluation, row: Expected): string {
  const quantity = atPosts(row) ? null : quantityOf(row);
  const place: At = {
    ...(row.wire === null ? {} : { wire: row.wire }),
    ...(row.coil === null ? {} : { coil: row.coil }),
    ...(row.point === null ? {} : { point: row.point }),
  };
  if (quantity === null) return modelValue(e, 'point_supply', place);
  return modelValue(e, quantity, { ...place, spread: SPREADS.indexOf('expected') });
}

/** Tolerances and the error of the instrument together, the unit once. */
function range(job: Job, row: Expected): string {
  if (row.low === null || row.high === null) return blank;
  const [low, high] = (['low', 'high'] as const).map((end) =>
    kitValue(job, `test card: ${end}`, row[end], row),
  );
  return `<span class="r">${(low as string).replace(/\u00a0[^<]*<\/data>/, '</data>')} – ${high}</span>`;
}
