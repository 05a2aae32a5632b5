/** The tree of a value as lines of text; sources stand below, each once. */
import type { Part, Told } from '../explain/tree.ts';
import { WIDTH } from './columns.ts';

/** The tree, then its sources; ends with a line break. */
export function explainReport(told: Told): string {
  const sources: string[] = [];
  const tree = lines(told, '', '', sources);
  return `${[...tree, ...sources.flatMap((text, i) => folded(`[${i + 1}] ${text}`, '', '    '))].join('\n')}\n`;
}

/** A value that is told in a few words and not by a branch of its own. */
const short = ({ formula }: Told): boolean => formula === '';

function lines(told: Told, first: string, rest: string, sources: string[]): string[] {
  const { label, symbol, text, id, note } = told;
  const head = `${label}${of(told)}: ${symbol} = ${known(text)}  ${id}${cited(told, sources)}`;
  const { formulas, ends } = throughOf(told);
  const branches = ends.parts.flatMap((part) =>
    part.role === 'enters' ? part.told.filter((one) => !short(one)) : [],
  );
  const stem = branches.length > 0 ? `${rest}│ ` : `${rest}  `;
  const brief = inOrder(ends.parts).flatMap((part) => briefly(part, sources));
  return [
    ...folded(head, first, `${stem}  `),
    ...formulas.flatMap((formula) => folded(`= ${formula}`, stem, `${stem}  `)),
    ...(brief.length === 0 ? [] : folded(`with ${brief.join('; ')}`, stem, `${stem}  `)),
    ...(note === '' || rest !== '' ? [] : folded(note, stem, stem)),
    ...branches.flatMap((one, i) => {
      const end = i === branches.length - 1;
      return lines(one, `${rest}${end ? '└ ' : '├ '}`, `${rest}${end ? '  ' : '│ '}`, sources);
    }),
  ];
}

/** What enters goes before what only decides or picks. */
const inOrder = (parts: readonly Part[]): Part[] => [
  ...parts.filter(({ role }) => role === 'enters'),
  ...parts.filter(({ role }) => role !== 'enters'),
];

const known = (text: string): string => (text === '–' ? 'not known' : text.replaceAll(' ', STAYS));
/** A blank at which no line ends. */
const STAYS = '\u00a0';
const of = (told: Told): string => (told.of === '' ? '' : `, ${told.of}`);

/** Formulas down to the first that is more than the name of another value. */
function throughOf(told: Told): { formulas: readonly string[]; ends: Told } {
  const formulas = told.formula === '' ? [] : [told.formula];
  const next = told.parts.flatMap((part) => (part.role === 'enters' ? part.told : []));
  const [one] = next;
  if (one === undefined || next.length > 1 || one.id !== told.formula || short(one))
    return { formulas, ends: told };
  const inner = throughOf(one);
  return { formulas: [`${told.formula}${of(one)}`, ...inner.formulas], ends: inner.ends };
}

/** The number of a source in the list below; what says where a value is from in a word stands behind it at once. */
function cited({ source, kind }: Told, sources: string[]): string {
  if (source === '') return '';
  if (kind === 'structure' || source.length < 12) return ` (${source})`;
  if (!sources.includes(source)) sources.push(source);
  return ` [${sources.indexOf(source) + 1}]`;
}

function briefly({ id, role, count, span, told }: Part, sources: string[]): string[] {
  if (role !== 'enters') return told.map((one) => `${id} ${known(one.text)}`);
  // Which conductor carries which coil is plain: told one by one it would only fill the screen.
  if (
    count > 1 &&
    told.length > 0 &&
    told.every(({ kind, text }) => kind === 'structure' && text === told[0]?.text)
  )
    return [`${told.length} ${id}, each ${told[0]?.text}`];
  const whole = told.length === count ? [] : [`${count} ${id}${span === '' ? '' : ` (${span})`}`];
  const single = told.filter(short).map((one) => {
    const which = count > 1 || one.kind === 'column' ? of(one).replace(', ', ' of ') : '';
    const end = one.cut === 'told above' ? ' (above)' : one.cut === 'deeper' ? ' …' : cited(one, sources);
    return `${id}${which} ${known(one.text)}${end}`;
  });
  return [...whole, ...single];
}

function folded(text: string, first: string, rest: string): string[] {
  const found: string[] = [];
  let [line, start] = [first, true];
  for (const word of text.split(' ')) {
    if (!start && [...line].length + 1 + [...word].length > WIDTH) {
      found.push(line.trimEnd());
      [line, start] = [rest, true];
    }
    line += `${start ? '' : ' '}${word}`;
    start = false;
  }
  return [...found, line].map((one) => one.replaceAll(STAYS, ' '));
}
