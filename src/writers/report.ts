/** The report for the terminal: the verdict, what to buy, currents, drops, findings. At most 80 columns. */
import { asRead, printNumber, printValue } from '../basis/print.ts';
import { printCitation } from '../basis/sources.ts';
import type { Design } from '../design/design.ts';
import type { Evaluation } from '../engine/evaluate.ts';
import type { Finding, Overall, Verdict } from '../findings/finding.ts';
import type { Result } from '../findings/result.ts';
import { RULES, type RuleId, type Sense } from '../findings/rules.ts';
import { heading, printQuantity, sentence, WORDS } from '../findings/words.ts';
import { QUANTITIES, type QuantityName } from '../model/model.ts';
import { CAUTIONS } from './cautions.ts';
import { columns, fold } from './columns.ts';

const WIDTH = 80;

/** Escape codes for the few places that are set off; none when the output is no terminal. */
interface Style {
  readonly strong: (text: string) => string;
  readonly verdict: (verdict: Verdict, text: string) => string;
}
const plain: Style = { strong: (t) => t, verdict: (_, t) => t };
const CODES: Readonly<Record<Verdict, string>> = { pass: '32', fail: '31', unknown: '33', advice: '36' };
const colour: Style = {
  strong: (t) => `\u001b[1m${t}\u001b[0m`,
  verdict: (v, t) => `\u001b[1;${CODES[v]}m${t}\u001b[0m`,
};

const VERDICTS: Readonly<Record<Overall, string>> = { pass: 'PASS', fail: 'FAIL', unknown: 'UNKNOWN' };

/** The whole report. `coloured` only for a terminal that wants colours. */
export function report(result: Result, coloured: boolean): string {
  const style = coloured ? colour : plain;
  const { evaluation: e } = result;
  const sections = [
    head(result, style),
    section(style, 'What to buy', toBuy(e)),
    section(style, 'One coil, stiff supply', charges(e)),
    section(style, 'Currents at the worst point of each run', currents(e)),
    section(style, 'Drops: what a meter shows (average), what a scope shows (peak)', drops(e)),
    section(style, 'Worst coil behind this feed', worst(e)),
    section(style, 'Findings', judged(result, style)),
    ...(e.design.assumed.length > 0
      ? [section(style, 'Taken where the design says nothing', assumed(e.design))]
      : []),
    section(style, 'Cautions', CAUTIONS.map((c) => bullet(c)).join('\n')),
  ];
  return `${sections.join('\n\n')}\n`;
}

const section = (style: Style, title: string, body: string): string => `${style.strong(title)}\n${body}`;
const bullet = (text: string): string => fold(text, WIDTH, '    ').replace('    ', '  - ');

function head({ evaluation: { design }, findings, verdict }: Result, style: Style): string {
  const count = (v: Verdict): number => findings.filter((f) => f.verdict === v).length;
  const marginal = findings.filter((f) => f.marginal).length;
  const parts = [
    `${count('fail')} fail`,
    `${count('unknown')} unknown`,
    ...(count('advice') > 0 ? [`${count('advice')} advice`] : []),
    `${count('pass')} pass${marginal > 0 ? `, ${marginal} of them within 10 % of the limit` : ''}`,
  ];
  return [
    fold(design.title, WIDTH, '').split('\n').map(style.strong).join('\n'),
    `${style.verdict(verdict, VERDICTS[verdict])}  ${parts.join(', ')}`,
  ].join('\n');
}

/** Value of a quantity as it is read, without its unit. */
const read = (e: Evaluation, name: QuantityName, at: Parameters<Evaluation['number']>[1]): string =>
  asRead(e.number(name, at), QUANTITIES[name].unit, QUANTITIES[name].shown)[0];

function toBuy(e: Evaluation): string {
  const { design } = e;
  const rows = design.runs.map((r, run) => {
    const wires = design.wires.filter((w) => w.run === run);
    const lengths = wires.map((w) => w.length);
    const [least, most] = [Math.min(...lengths), Math.max(...lengths)];
    const length =
      least === most
        ? `${wires.length} × ${printNumber(least)} m`
        : `${wires.length} × ${printNumber(least)}–${printNumber(most)} m`;
    return [
      r.name,
      printSize(String(e.value('gauge', { run }))),
      r.gauge === 'auto' ? 'chosen' : 'stated',
      r.insulation,
      length,
      partsOf(e, design, run),
    ];
  });
  const titles = ['Run', 'Size', '', 'Ins.', 'Length', 'In it'].map((title) => ({ title }));
  const copper = printValue(e.number('copper_total'), 'kg', 'g');
  return `${columns(titles, rows)}\n  Copper of all conductors: ${copper}`;
}

/** A size as it is printed: `6 mm²`. */
export const printSize = (gauge: string): string => gauge.replace('mm2', 'mm²');

function partsOf(e: Evaluation, design: Design, run: number): string {
  const spec = design.runs[run] as Design['runs'][number];
  const fuse =
    spec.fuse &&
    `${printQuantity('fuse_rating', e.number('fuse_rating', { run }))} fuse, type ${spec.fuse.type}`;
  const relay = spec.relay && `${printQuantity('relay_rating', e.number('relay_rating', { run }))} relay`;
  return [fuse, relay].filter(Boolean).join('; ');
}

function charges(e: Evaluation): string {
  const rows = e.design.points.map((p, speed) => [
    p.name,
    ...(['speed', 'supply', 'dwell', 'duty', 'peak', 'energy'] as const).map((q) => read(e, q, { speed })),
    e.number('clipped', { speed }) === 1 ? 'dwell cut short' : '',
  ]);
  const titles = ['Point', 'rpm', 'V', 'dwell ms', 'duty %', 'peak A', 'energy mJ'];
  const note =
    e.number('bound') === 1
      ? '\n  Only a peak current is known: all currents are a bound, energies are unknown.'
      : '';
  return (
    columns(
      [
        ...titles.map((title, i) => ({ title, align: i === 0 ? ('left' as const) : ('right' as const) })),
        { title: '' },
      ],
      rows,
    ) + note
  );
}

/** The conductor of a run with the largest effective current. */
function worstWire(e: Evaluation, run: number): number {
  const wires = e.design.wires.flatMap((w, i) => (w.run === run ? [i] : []));
  const load = (wire: number): number => e.number('worst_effective', { wire }) ?? 0;
  return wires.reduce((a, b) => (load(b) > load(a) ? b : a));
}

function currents(e: Evaluation): string {
  const rows = e.design.runs.map((r, run) => {
    const wire = worstWire(e, run);
    const point = (e.number('worst_point', { wire }) ?? 1) - 1;
    return [
      r.name,
      e.design.points[point]?.name ?? '',
      read(e, 'average', { wire, point }),
      read(e, 'effective', { wire, point }),
      read(e, 'wire_peak', { wire }),
      read(e, 'ampacity', { run }),
      read(e, 'wire_T', { wire }),
    ];
  });
  const titles = ['Run', 'at', 'avg A', 'eff. A', 'peak A', 'ampacity A', 'at most °C'];
  return columns(
    titles.map((title, i) => ({ title, align: i < 2 ? 'left' : 'right' })),
    rows,
  );
}

function drops(e: Evaluation): string {
  const { points } = e.design;
  const last = points.length - 1;
  const rows = e.design.runs.map((r, run) => {
    const wire = worstWire(e, run);
    const shown = points.map((_, point) =>
      ['drop_average', 'drop_peak'].map((q) => read(e, q as QuantityName, { wire, point })).join(' / '),
    );
    return [r.name, read(e, 'wire_ohm', { wire }), ...(last > 3 ? [shown[0], ...shown.slice(-3)] : shown)];
  });
  const names = points.map((p) => p.name);
  const titles = ['Run', 'mΩ', ...(last > 3 ? [names[0], ...names.slice(-3)] : names)];
  return `${columns(
    titles.map((title, i) => ({ title: title ?? '', align: i === 0 ? 'left' : 'right' })),
    rows.map((row) => row.map((cell) => cell ?? '')),
  )}\n  all in mV`;
}

function worst(e: Evaluation): string {
  const coil = (e.number('worst_coil') ?? 1) - 1;
  const rows = e.design.points.map((p, point) => [
    p.name,
    ...(
      ['coil_drop', 'coil_supply', 'coil_peak', 'coil_energy', 'energy_kept', 'coil_winning_dwell'] as const
    ).map((q) => read(e, q, { coil, point })),
  ]);
  const titles = [
    `Coil ${e.design.coils[coil]?.id}`,
    'drop V',
    'supply V',
    'peak A',
    'energy mJ',
    'kept %',
    'dwell to win back ms',
  ];
  return columns(
    titles.map((title, i) => ({ title, align: i === 0 ? 'left' : 'right' })),
    rows,
  );
}

const MARKS: Readonly<Record<Verdict, string>> = {
  pass: 'pass',
  fail: 'FAIL',
  unknown: 'unknown',
  advice: 'advice',
};
const SIGNS: Readonly<Record<Sense, string>> = { 'at most': '≤', 'at least': '≥', below: '<', above: '>' };

/** What fails, is unknown or is advice in sentences, what passes in a table, the sources below. */
function judged({ findings, evaluation: e }: Result, style: Style): string {
  const sources = [...new Set(findings.map((f) => printCitation(f.source)))];
  const mark = (f: Finding): string => `[${sources.indexOf(printCitation(f.source)) + 1}]`;
  const open = findings
    .filter((f) => f.verdict !== 'pass')
    .map((f) => {
      const title = `  ${style.verdict(f.verdict, MARKS[f.verdict].padEnd(7))}  ${heading(f)} ${mark(f)}`;
      return `${title}\n${fold(sentence(f, e), WIDTH, ' '.repeat(11))}`;
    });
  const rows = byRule(findings.filter((f) => f.verdict === 'pass')).map(([f, ...others]) => {
    const { value, limit } = RULES[f.rule];
    return [
      `${f.marginal ? '~' : ' '} ${WORDS[f.rule].title}`,
      f.subject === 'feed' ? '' : subjects(f.subject, others.length),
      printQuantity(value, f.value),
      `${SIGNS[f.sense]} ${printQuantity(limit, f.limit, value)}`,
      f.margin === null ? '' : printNumber(f.margin * 100, 2),
      mark(f),
    ];
  });
  const titles = ['  Passing', 'closest', 'value', 'limit', 'margin %', 'by'];
  const table = columns(
    titles.map((title, i) => ({ title, align: i < 2 || i === 3 ? 'left' : 'right' })),
    rows,
  );
  const marginal = findings.some((f) => f.marginal) ? ['  ~ within 10 % of the limit'] : [];
  return [...open, table, ...marginal, ...sources.map((s, i) => fold(`[${i + 1}] ${s}`, WIDTH, '  '))].join(
    '\n',
  );
}

/** Findings of the same rule together, in the order in which the rules first occur. */
function byRule(found: readonly Finding[]): [Finding, ...Finding[]][] {
  const groups = new Map<RuleId, [Finding, ...Finding[]]>();
  for (const f of found) {
    const group = groups.get(f.rule);
    if (group) group.push(f);
    else groups.set(f.rule, [f]);
  }
  return [...groups.values()];
}

/** Room for a subject in the table of what passes. */
const SUBJECT = 14;

/** The subject closest to its limit, and how many others there are. */
function subjects(closest: string, others: number): string {
  const more = others > 0 ? ` +${others}` : '';
  const room = SUBJECT - more.length;
  return (closest.length > room ? `${closest.slice(0, room - 1)}…` : closest) + more;
}

const assumed = (design: Design): string =>
  design.assumed.map((a) => bullet(`${a.path}: ${a.value} (${a.why})`)).join('\n');
