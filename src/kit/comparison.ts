/** Two feeds side by side on one page, for the customer who asks what the new one is for. */
import { asRead, printNumber } from '../basis/print.ts';
import { escaped } from '../pictures/elements.ts';
import type { Change, Compared } from '../readings/compare.ts';
import { against } from '../writers/compare-report.ts';
import { VERDICT_WORDS } from '../writers/verdict.ts';
import { name, shell, table } from './html.ts';

/** More than this does not fit the page; the report has the rest. */
const MOST = { points: 6, findings: 5, parts: 7 };

const STYLE = `
h1{font-size:14pt}
h2{font-size:11pt;margin:3mm 0 1mm}
.gain{font-size:12.5pt;font-weight:bold;margin:3mm 0}
.drawn svg{display:block;width:100%;height:auto;max-height:70mm}
table{font-size:8pt}
th,td{padding:.4mm 1mm;white-space:nowrap}
th{white-space:normal}
td:first-child{white-space:normal;min-width:36mm}
.two{display:grid;grid-template-columns:1fr 1fr;gap:0 6mm}
.two ul{padding-left:5mm;font-size:8.5pt;line-height:1.25}
.two li{margin-bottom:.5mm}
`;

/** The page; `picture` is an SVG of the energy of both over engine speed, null where there is none. */
export function comparison(c: Compared, picture: string | null): string {
  const [a, b] = c.sides;
  const title = `${a.title} and ${b.title}`;
  const body = [
    '<h1>Two feeds for the same coils</h1>',
    ...c.sides.map(
      (side) =>
        `<p><b>${escaped(side.name)}</b> ${name(side.title)}: ${escaped(VERDICT_WORDS[side.result.verdict])}</p>`,
    ),
    c.gain === null ? '' : `<p class="gain">${escaped(c.gain)}</p>`,
    points(c),
    picture === null ? '' : `<div class="drawn">${picture}</div>`,
    `<div class="two">${[
      listed(`Put right by ${b.name}`, c.vanish.map(changed), MOST.findings),
      ...(c.stay.length > 0 ? [listed('Open with both', c.stay.map(changed), MOST.findings)] : []),
      ...(c.appear.length > 0
        ? [listed(`Passes with ${a.name}, not with ${b.name}`, c.appear.map(changed), MOST.findings)]
        : []),
    ].join('\n')}</div>`,
    `<div class="two">${c.sides
      .map((side, i) => listed(`Parts of ${side.name}`, c.parts[i] ?? [], MOST.parts))
      .join('\n')}</div>`,
    '<p class="about">Computed from the two designs by coilfeed, not measured. Currents are those of all coils together, the ' +
      'supply is the lowest at a coil as it fires, the energy that of the weakest firing.</p>',
  ];
  return shell(title, body.filter((part) => part !== '').join('\n'), STYLE);
}

const changed = ({ title, subjects }: Change): string => {
  const where = [...new Set(subjects.flat())].filter((subject) => subject !== 'feed');
  return `${title}${where.length > 0 ? ` (${where.join(', ')})` : ''}`;
};

/** A list of texts of ours and names; the last of its lines says how many more there are. */
function listed(title: string, texts: readonly string[], most: number): string {
  const shown = texts.length > most ? texts.slice(0, most - 1) : texts;
  const more = texts.length - shown.length;
  const lines = [...shown.map(name), ...(more > 0 ? [`and ${more} more: the report has them`] : [])];
  return `<div><h2>${escaped(title)}</h2>${lines.length === 0 ? '<p>nothing</p>' : `<ul>${lines.map((line) => `<li>${line}</li>`).join('')}</ul>`}</div>`;
}

/** What a clamp and a meter show, by the exact currents. Nothing where only a peak current is known of a coil. */
function points({ sides: [a, b], points: all }: Compared): string {
  const rows = all.flatMap(({ name: point, rpm, exact: [first, second] }) => {
    if (first === null || second === null) return [];
    const pair = (key: 'average' | 'peak' | 'supply'): string[] => [
      printNumber(first[key]),
      printNumber(second[key]),
    ];
    return [
      [
        `${name(point)}${rpm === null ? '' : `, ${Math.round(rpm)} rpm`}`,
        ...pair('average'),
        ...pair('peak'),
        ...pair('supply'),
        asRead(first.energy, 'J')[0],
        asRead(second.energy, 'J')[0],
        against(first.energy, second.energy),
      ],
    ];
  });
  if (rows.length === 0) return '';
  const heads = ['average A', 'peak A', 'supply V', 'energy mJ'].flatMap((what) => [
    `${a.name}: ${what}`,
    `${b.name}: ${what}`,
  ]);
  return table(
    ['Point', ...heads, `${b.name} to ${a.name}`],
    rows.slice(0, MOST.points),
    [1, 2, 3, 4, 5, 6, 7, 8, 9],
  );
}
