/**
 * The report for the terminal, at most 80 columns. Verdict; if it fails why, and what would pass; what to buy; figures;
 * findings; cautions. It is meant to fit in sixty lines; `all` tells the rest.
 */
import { printNumber } from '../basis/print.ts';
import type { Units } from '../basis/shown.ts';
import { printCitation } from '../basis/sources.ts';
import { listed } from '../design/problems.ts';
import type { Evaluation } from '../engine/evaluate.ts';
import type { Finding, Verdict } from '../findings/finding.ts';
import type { Result } from '../findings/result.ts';
import { SIGNS } from '../findings/rule.ts';
import { RULES, type RuleId } from '../findings/rules.ts';
import { type Told, toldOnce, WORDS } from '../findings/words.ts';
import type { QuantityName } from '../model/model.ts';
import type { OwnFound } from '../own/found.ts';
import { SENSES } from '../own/rows.ts';
import type { Remedy } from '../remedies/remedy.ts';
import type { Ordered } from '../shop/orders.ts';
import { BUY_TITLE, BUY_TITLES, bought } from '../views/buy.ts';
import { paths, pathText } from '../views/paths.ts';
import { labelOf, printQuantity, printWritten, say } from '../views/print.ts';
import { standsIn } from '../views/stand-in.ts';
import {
  coilTable,
  faultTable,
  fuseTable,
  loadTable,
  pointTable,
  relayTable,
  type Table,
  wireTable,
} from '../views/table.ts';
import { CAUTIONS } from './cautions.ts';
import { bullet, columns, fitted, fold, tableText, WIDTH } from './columns.ts';
import { remedyLines } from './remedies.ts';
import {
  measuredLines,
  measuredShortly,
  orderLines,
  priceLine,
  takenLines,
  usedLines,
  usedShortly,
} from './shop.ts';
import { VERDICT_WORDS, verdictCounts } from './verdict.ts';

/** Lines of the report that is not asked for all: sixty, two of them in reserve. */
const LINES = 58;
/** Findings that do not pass which it tells at least, whatever else there is. */
const LEAST = 1;
/** Between the word of the verdict and what is behind it. */
const GAP = 2;
/** Before the words of a finding. */
const INDENT = ' '.repeat(11);
/** Lines of what was taken where the design says nothing, and one that says where the rest is. Arbitrary. */
const TAKEN = 3;
/** Lines that findings need where all passes, and where something does not. */
const NEEDED = { pass: 6, open: 12 };

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

export interface Asked {
  /** Only for a terminal that wants colours. */
  readonly coloured?: boolean;
  /** Everything, however long. */
  readonly all?: boolean;
}

/** The report; `remedies` are those that were tried, the least change first, `order` what the shelf lacks. */
export function report(
  result: Result,
  asked: Asked = {},
  remedies: readonly Remedy[] = [],
  order: Ordered | null = null,
): string {
  const style = asked.coloured ? colour : plain;
  const all = asked.all === true;
  const { evaluation: e, verdict } = result;
  const table = (of: Table): string[] =>
    of.rows.length === 0 ? [] : [section(style, of.title, tableText(of, !all))];
  const before = [
    head(result, style),
    ...(verdict === 'fail'
      ? [why(result, style, remedies), ...toOrder(order, style)]
      : [section(style, BUY_TITLE, [toBuy(e), ...priceLine(e)].join('\n'))]),
    section(
      style,
      'Current path',
      paths(e.design)
        .map((path) => bullet(pathText(path)))
        .join('\n'),
    ),
  ];
  const figures = [...(all ? table(pointTable(e)) : []), ...table(coilTable(e)), ...table(wireTable(e))];
  const detail = all ? [loadTable, fuseTable, relayTable, faultTable].flatMap((of) => table(of(e))) : [];
  const after = [
    ...(e.design.shop === null ? [] : fromShop(e, style, all)),
    ...ownLines(result, style),
    ...(e.design.assumed.length > 0 ? [assumed(e, style, all)] : []),
    section(style, 'Cautions', CAUTIONS.map(bullet).join('\n')),
  ];
  // Figures give way before findings do.
  const needed = result.findings.every((f) => f.verdict === 'pass') ? NEEDED.pass : NEEDED.open;
  const fits = (some: readonly string[]): boolean =>
    linesOf([...before, ...some, ...after]) + needed <= LINES;
  const kept = all ? figures : ([figures, figures.slice(0, 1)].find(fits) ?? []);
  const room = all ? Number.POSITIVE_INFINITY : LINES - linesOf([...before, ...kept, ...after]) - 1;
  const findings = section(style, 'Findings', judged(result, style, room));
  return `${[...before, ...kept, ...detail, findings, ...after].join('\n\n')}\n`;
}

/** Values and rules of the author. */
function ownLines({ own = [] }: Result, style: Style): string[] {
  if (own.length === 0) return [];
  return [
    section(
      style,
      'The author’s own',
      ownRows(own, (verdict, text) => style.verdict(verdict, text)),
    ),
  ];
}

/** A line for each value and rule of the author; `look` makes the mark of a verdict stand out. */
export function ownRows(
  own: NonNullable<Result['own']>,
  look: (verdict: Verdict, text: string) => string = (_, text) => text,
): string {
  return own
    .map((one) => {
      const { verdict } = one;
      const mark = verdict === null ? ' '.repeat(7) : look(verdict, MARKS[verdict].padEnd(7));
      return `  ${mark}  ${fold(ownText(one), WIDTH, INDENT).trimStart()}`;
    })
    .join('\n');
}

/** `Wire in all: 5.4 m, must be ≤ 2 m. The reel holds 2 m.` */
export function ownText({ label, value, unit, sense, limit, verdict, words, error }: OwnFound): string {
  const printed =
    typeof value === 'number' ? printNumber(value, 4) : (value ?? `comes to ${error ?? 'nothing'}`);
  const rule = sense === null ? '' : `, must be ${SENSES[sense]} ${limit ?? 0} ${unit}`.trimEnd();
  const said = verdict === null || verdict === 'pass' || words === '' ? '' : `. ${words}`;
  return `${label}: ${`${printed} ${unit}`.trimEnd()}${rule}${said}`;
}

const linesOf = (sections: readonly string[]): number =>
  sections.reduce((sum, text) => sum + text.split('\n').length + 1, 0);

const section = (style: Style, title: string, body: string): string => `${style.strong(title)}\n${body}`;

function head({ evaluation: e, findings, verdict, own }: Result, style: Style): string {
  const word = VERDICT_WORDS[verdict];
  const counts = fold(verdictCounts(findings, own), WIDTH, ' '.repeat(word.length + GAP));
  const names = [
    'worst_drop',
    'drop_limit',
    'least_kept',
    ...(verdict === 'fail' ? [] : ['copper_total']),
  ] as const;
  const whole = (names as readonly QuantityName[])
    .filter((name) => !standsIn(e, name))
    .map((name) => `${labelOf(name)} ${say(e, name)}`);
  return [
    fold(e.design.title, WIDTH, '').split('\n').map(style.strong).join('\n'),
    `${style.verdict(verdict, word)}${counts.slice(word.length)}`,
    fold(whole.join('; '), WIDTH, ''),
  ].join('\n');
}

/** What is fine, what fails most pressingly, and what would pass. */
function why(
  { findings, evaluation: e, own = [] }: Result,
  style: Style,
  remedies: readonly Remedy[],
): string {
  const failing = findings.filter((f) => f.verdict === 'fail');
  const [first, ...others] = toldOnce(failing, e);
  const broken = own.filter(({ verdict }) => verdict === 'fail');
  if (first === undefined)
    return section(
      style,
      'Why',
      broken
        .map((one) => fold(`A rule of the author’s own is not met. ${ownText(one)}`, WIDTH, '  '))
        .join('\n'),
    );
  const fine = e.design.runs
    .map(({ name }) => name)
    .filter((name) => failing.every((f) => f.subject !== name));
  const passing = fine.length === 0 ? '' : `Nothing fails in ${listed(fine)}. `;
  const also = [
    ...others.map((one) => one.heading),
    ...broken.map(({ label }) => `${label} (the author’s rule)`),
  ];
  const rest = also.length === 0 ? '' : ` Also failing: ${also.join('; ')}.`;
  return [
    section(style, 'Why', fold(`${passing}${first.heading}: ${first.sentence}${rest}`, WIDTH, '  ')),
    section(style, 'What would pass', remedyLines(remedies, e.design.units)),
  ].join('\n');
}

/** What to order where the shelf has no answer. */
const toOrder = (order: Ordered | null, style: Style): string[] =>
  order === null
    ? []
    : [section(style, 'Not on the shelf; to order', orderLines(order).map(bullet).join('\n'))];

function toBuy(e: Evaluation): string {
  const lines = bought(e).map(({ run, size, chosen, lengths, parts }) => ({
    wire: [run, size, chosen ? 'chosen' : 'stated', lengths],
    parts,
  }));
  const beside = lines.flatMap(({ wire, parts: [first = '', ...others] }) => [
    [...wire, first],
    ...others.map((part) => ['', '', '', '', part]),
  ]);
  const text = columns(
    BUY_TITLES.map((title) => ({ title })),
    beside,
  );
  if (text.split('\n').every((line) => [...line].length <= WIDTH)) return text;
  // Too wide: what is in a run stands below it.
  const below = lines.flatMap(({ wire, parts }) => [wire, ...parts.map((part) => ['', part, '', ''])]);
  return columns(
    BUY_TITLES.slice(0, -1).map((title) => ({ title })),
    below,
  );
}

const MARKS: Readonly<Record<Verdict, string>> = {
  pass: 'pass',
  fail: 'FAIL',
  unknown: 'unknown',
  advice: 'advice',
};

/** What fails, is unknown or is advice in sentences, what passes in a table, the sources below; at most `room` lines. */
function judged({ findings, evaluation: e }: Result, style: Style, room: number): string {
  const sources: string[] = [];
  const mark = (f: Finding): string => {
    const source = printCitation(f.source);
    if (!sources.includes(source)) sources.push(source);
    return `[${sources.indexOf(source) + 1}]`;
  };
  const notes = (): string[] => sources.map((s, i) => fold(`[${i + 1}] ${s}`, WIDTH, '  '));
  const used = (lines: readonly string[]): number => lines.join('\n').split('\n').length;
  const lines: string[] = [];
  const open = toldOnce(
    findings.filter((f) => f.verdict !== 'pass'),
    e,
  );
  const untold: Told[] = [];
  for (const one of open) {
    const { first, heading: title } = one;
    const before = sources.length;
    const verdict = style.verdict(first.verdict, MARKS[first.verdict].padEnd(7));
    const named = `  ${verdict}  ${fold(`${title} ${mark(first)}`, WIDTH, INDENT).trimStart()}`;
    // The most pressing failure is told in words above.
    const above = one === open[0] && first.verdict === 'fail';
    const text = above ? named : `${named}\n${fold(one.sentence, WIDTH, INDENT)}`;
    if (lines.length < LEAST || used([...lines, text, ...notes(), '']) <= room) lines.push(text);
    else {
      untold.push(one);
      sources.length = before;
    }
  }
  // The last of them come last, advice behind what does not pass.
  const count = untold.reduce((sum, { count }) => sum + count, 0);
  if (count > 0)
    lines.push(
      untold.every(({ first }) => first.verdict === 'advice')
        ? `  and ${count} more of advice`
        : `  and ${count} more that do${count === 1 ? 'es' : ''} not pass, or are advice`,
    );
  const groups = byRule(findings.filter((f) => f.verdict === 'pass'));
  const rows: string[][] = [];
  let shownRules = 0;
  for (const [f, ...others] of groups) {
    const before = sources.length;
    const row = passing(e, f, others.length, mark(f));
    // A line for the titles, one for the word on closeness, one for what is left out.
    if (rows.length + lines.length > 0 && used([...lines, ...notes()]) + rows.length + 4 > room) {
      sources.length = before;
      break;
    }
    rows.push(...row);
    shownRules += 1;
  }
  const table = rows.length === 0 ? [] : [columns(PASSING, fitted(PASSING, rows))];
  const left = groups.length - shownRules;
  const marginal = rows.some(([first]) => first?.startsWith('~')) ? ['~ within 10 % of the limit'] : [];
  const more = left > 0 ? [`${left} more pass`] : [];
  const foot = [
    ...marginal,
    ...more,
    ...(room === Number.POSITIVE_INFINITY ? [] : ['--all shows everything']),
  ];
  return [...lines, ...table, ...(foot.length > 0 ? [`  ${foot.join('; ')}`] : []), ...notes()].join('\n');
}

const PASSING = ['  Passing', 'closest', 'value', 'limit', 'margin %', 'by'].map((title, i) => ({
  title,
  align: i < 2 || i === 3 ? ('left' as const) : ('right' as const),
}));

/** A row, and in both systems of units another one below it where they differ. */
function passing(e: Evaluation, f: Finding, others: number, mark: string): string[][] {
  const { value, limit } = RULES[f.rule];
  const { units } = e.design;
  const pair = (system: Units): string[] => [
    printQuantity(value, f.value, system),
    `${SIGNS[f.sense]} ${printQuantity(limit, f.limit, system, value)}`,
  ];
  const first = pair(units === 'both' ? 'metric' : units);
  const second = units === 'both' ? pair('us') : first;
  const row = [
    `${f.marginal ? '~' : ' '} ${WORDS[f.rule].title}`,
    f.subject === 'feed' ? '' : subjects(f.subject, others),
    ...first,
    f.margin === null ? '' : printNumber(f.margin * 100, 2),
    mark,
  ];
  return second.join() === first.join() ? [row] : [row, ['', '', ...second, '', '']];
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

/** What came from the shop's own file, each part at its place or in a few words; nothing where no part of it is used. */
function fromShop(e: Evaluation, style: Style, all: boolean): string[] {
  const { shop, used } = e.design;
  const title = `From the shop’s file ${shop?.file ?? ''}`;
  const told = all
    ? [...usedLines(used), ...takenLines(e, (run) => `${run}: `), ...measuredLines(e)]
    : [...takenLines(e, () => ''), ...(used.length === 0 ? [] : [usedShortly(used)]), ...measuredShortly(e)];
  if (told.length === 0) return [];
  if (all) return [section(style, title, told.map(bullet).join('\n'))];
  const text = fold(`${title}: ${told.join('; ')}`, WIDTH, '  ').trimStart();
  return [text.startsWith(title) ? `${style.strong(title)}${text.slice(title.length)}` : text];
}

/** What was taken where the design says nothing: each value with its reason, or the values alone. */
function assumed({ design }: Evaluation, style: Style, all: boolean): string {
  const title = 'Assumed where the design says nothing';
  if (all)
    return section(
      style,
      title,
      design.assumed
        .map((a) => bullet(`${a.path}: ${printWritten(a.value, design.units)} (${a.why})`))
        .join('\n'),
    );
  const told = design.assumed.map((a) => `${a.path} ${printWritten(a.value, design.units)}`);
  const lines = fold(`${title}: ${told.join('; ')}.`, WIDTH, '  ').split('\n');
  const text = [
    ...lines.slice(0, TAKEN),
    ...(lines.length > TAKEN
      ? [`  … ${design.assumed.length} values in all, with their reasons: --all`]
      : []),
  ].join('\n');
  return `${style.strong(title)}${text.trimStart().slice(title.length)}`;
}
