/** The tree of a value as lines of text; sources stand below, each once. */
import { alike, inOrder, known as knownText, of, short, throughOf } from '../explain/outline.ts';
import type { Part, Told } from '../explain/tree.ts';
import { WIDTH } from './columns.ts';

/** The tree, then its sources; ends with a line break. */
export function explainReport(told: Told): string {
  const sources: string[] = [];
  const tree = lines(told, '', '', sources);
  return `${[...tree, ...sources.flatMap((text, i) => folded(`[${i + 1}] ${text}`, '', '    '))].join('\n')}\n`;
}

function lines(told: Told, first: string, rest: string, sources: string[]): string[] {
  const { label, symbol, text, id, note } = told;
  const head = `${label}${of(told)}: ${symbol} = ${known(text)}  ${id}${cited(told, sources)}`;
  const { lines: formulas, ends } = throughOf(told);
  const branches = ends.parts.flatMap((part) =>
    part.role === 'enters' ? part.told.filter((one) => !short(one)) : [],
  );
  const stem = branches.length > 0 ? `${rest}│ ` : `${rest}  `;
  const brief = inOrder(ends.parts).flatMap((part) => briefly(part, sources));
  return [
    ...folded(head, first, `${stem}  `),
    ...formulas.flatMap(({ text: formula }) => folded(`= ${formula}`, stem, `${stem}  `)),
    ...(brief.length === 0 ? [] : folded(`with ${brief.join('; ')}`, stem, `${stem}  `)),
    ...(note === '' || rest !== '' ? [] : folded(note, stem, stem)),
    ...branches.flatMap((one, i) => {
      const end = i === branches.length - 1;
      return lines(one, `${rest}${end ? '└ ' : '├ '}`, `${rest}${end ? '  ' : '│ '}`, sources);
    }),
  ];
}

/** A blank at which no line ends. */
const STAYS = '\u00a0';
const known = (text: string): string => knownText(text).replaceAll(' ', text === '–' ? ' ' : STAYS);

/** The number of a source in the list below; what says where a value is from in a word stands behind it at once. */
function cited({ source, kind }: Told, sources: string[]): string {
  if (source === '') return '';
  if (kind === 'structure' || source.length < 12) return ` (${source})`;
  if (!sources.includes(source)) sources.push(source);
  return ` [${sources.indexOf(source) + 1}]`;
}

function briefly(part: Part, sources: string[]): string[] {
  const { id, role, count, span, told } = part;
  if (role !== 'enters') return told.map((one) => `${id} ${known(one.text)}`);
  if (alike(part)) return [`${told.length} ${id}, each ${told[0]?.text}`];
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
