/** What people do to a workbook, as steps of hands that know the sheets by what is written on them. */
import type { Step } from '../../peers/hands.ts';
import { cellAt, type Spot } from './sheet.ts';

export interface Done {
  readonly what: string;
  readonly steps: readonly Step[];
}

type Random = () => number;
const INPUTS = 'Inputs';

/** Rows of cells that belong together: all that stand under the headings of one table. */
function tables(spots: readonly Spot[]): Spot[][][] {
  const found: Spot[][][] = [];
  let rows: Spot[][] = [];
  for (const spot of spots) {
    const last = rows.at(-1)?.at(-1);
    if (last !== undefined && spot.row > last.row + 1) {
      found.push(rows);
      rows = [];
    }
    if (last === undefined || spot.row !== last.row || rows.length === 0) rows.push([spot]);
    else rows.at(-1)?.push(spot);
  }
  return [...found, rows];
}

const TEXTS = [
  '80 A',
  '4,0',
  ' 14 AWG ',
  '55 in',
  '1.5m',
  'x',
  '-',
  'n/a',
  '1e',
  '½',
  "5'",
  'auto ',
  'AUTO',
  '10 mm²',
  '4mm2',
  '0,75',
  '12',
  'TRUE',
  '2031-03-01',
  '1/2',
  '10%',
  '50 %',
  '=1/0',
  '*',
  '1 000',
  '12AWG',
  'None',
  'c',
];
const SIZES = [
  '18 AWG',
  '16 AWG',
  '12 AWG',
  '8 AWG',
  '2 AWG',
  '1/0 AWG',
  '0.75 mm2',
  '1.5 mm²',
  '16 mm2',
  '25 mm2',
  '14 SAE',
  '8 SAE',
  'auto',
  '#10',
  '00',
];
const WORDS: readonly (readonly [RegExp, readonly string[]])[] = [
  [/^Conductor size|^(Small|Larg)est size/, SIZES],
  [/^Insulation/, ['A', 'B', 'C', 'd', 'TXL', 'gxl', 'SXL', 'PTFE', 'E']],
  [/^Material/, ['PVC', 'pvc', 'cross-linked', 'Cross linked', 'rubber']],
  [/^Type/, ['C', 'E', 'F', 'SF30', 'sf 51', 'unknown', 'MIDI', 'c']],
  [/^Series/, ['AWG', 'SAE', 'mm2', 'mm²']],
  [/^Suppression/, ['none', 'Diode', 'resistor', 'diode zener', 'RC']],
  [/^Must close/, ['before cranking', 'While cranking', 'later']],
  [/rating/i, ['auto', '15', '30', '7.5', '22', '40', '80', '12 A']],
];

const FORMULAS = [
  '=1.5*2',
  '=55*0.0254',
  '=(1+2)/4',
  '=2+',
  '=SUM(1,2)',
  '=PI()',
  '="auto"',
  '=drop_limit',
  '=A1',
  '=TRUE',
  '=1E3/4',
  '=-3',
  '=0.1+0.2',
];

/** One thing that somebody might do: to single cells, or to more of a sheet. The same numbers make the same one. */
export function somebody(spots: readonly Spot[], random: Random, of: 'cells' | 'sheets'): Done {
  const pick = <T>(all: readonly T[]): T => all[Math.floor(random() * all.length)] as T;
  const filled = spots.filter(({ value }) => value !== null);
  const numbers = spots.filter(({ value }) => typeof value === 'number');
  const any = (): Spot => (random() < 0.75 ? pick(filled) : pick(spots));
  const said = ({ at, label, heading, value }: Spot): string => `${at} (${label}, ${heading}: ${value})`;
  const type = (spot: Spot, text: string, how: 'type' | 'text' = 'type'): Done => ({
    what: `${how} ${JSON.stringify(text)} into ${said(spot)}`,
    steps: [[how, INPUTS, spot.at, text]],
  });
  const cells: (() => Done)[] = [
    () => {
      const spot = pick(numbers);
      return type(
        spot,
        String(Number((Number(spot.value) * pick([0.5, 0.8, 0.95, 1.1, 1.5, 2.5])).toPrecision(4))),
      );
    },
    () => {
      const spot = pick(numbers);
      return type(
        spot,
        String(pick([-1, 0, 0.0001, 1e3, 1e7, -Number(spot.value), Number(spot.value) + 0.5])),
      );
    },
    () => type(any(), pick(TEXTS)),
    () => type(any(), pick(TEXTS), 'text'),
    () => {
      const [of, words] = pick(WORDS);
      const there = spots.filter(({ label }) => of.test(label));
      return type(pick(there), pick(words), random() < 0.5 ? 'type' : 'text');
    },
    () =>
      type(
        any(),
        pick([...FORMULAS, `=${pick(spots).at}`, `=${pick(numbers).at}*1.1`, `=$${pick(numbers).at}`]),
      ),
    () => {
      const spot = pick(filled);
      return { what: `empty ${said(spot)}`, steps: [['clear', INPUTS, spot.at]] };
    },
  ];
  const sheets: (() => Done)[] = [
    () => {
      const [a, b] = [any(), pick(spots)];
      return { what: `copy ${said(a)} over ${said(b)}`, steps: [['copy', INPUTS, a.at, b.at]] };
    },
    () => {
      const [a, b] = [pick(filled), pick(spots)];
      return { what: `cut ${said(a)} and paste over ${said(b)}`, steps: [['move', INPUTS, a.at, b.at]] };
    },
    () => {
      const table = pick(tables(spots).filter((rows) => rows.length > 2));
      const [first, last] = [table[0]?.[0] as Spot, table.at(-1)?.at(-1) as Spot];
      const range = `${first.at}:${cellAt(last.row, Math.max(...table.flat().map(({ column }) => column)))}`;
      const labelled = `A${first.row}:${range.split(':')[1]}`;
      return pick<Done>([
        { what: `sort ${range}`, steps: [['sort', INPUTS, range, '0', 'down']] },
        {
          what: `sort ${labelled} with its labels`,
          steps: [['sort', INPUTS, labelled, String(first.column), 'down']],
        },
        {
          what: `pull ${first.at} down over ${range}`,
          steps: [['fill', INPUTS, `${first.at}:${cellAt(last.row, first.column)}`]],
        },
        { what: `empty ${range}`, steps: [['clear', INPUTS, range]] },
      ]);
    },
    () => {
      const runs = tables(spots).filter((rows) => (rows[0]?.length ?? 0) > 1 && rows.length > 5);
      const table = pick(runs);
      const columns = [...new Set(table.flat().map(({ column }) => column))];
      const [from, to] = [pick(columns), pick(columns)];
      const rows = table.flat().map(({ row }) => row);
      const [top, bottom] = [Math.min(...rows), Math.max(...rows)];
      return {
        what: `copy column ${cellAt(top, from)}:${cellAt(bottom, from)} over ${cellAt(top, to)}`,
        steps: [['copy', INPUTS, `${cellAt(top, from)}:${cellAt(bottom, from)}`, cellAt(top, to)]],
      };
    },
    () => {
      const [what, many] = [pick(['rows', 'columns'] as const), pick(['1', '2'])];
      const spot = pick(spots);
      const at = String(what === 'rows' ? spot.row - 1 : spot.column);
      const then: Step[] = random() < 0.3 ? [['rename', INPUTS, 'Eingaben, 2']] : [];
      return {
        what: `insert ${many} ${what} at ${said(spot)}${then.length ? ', rename the sheet' : ''}`,
        steps: [['insert', INPUTS, what, at, many], ...then],
      };
    },
    () => {
      const spot = pick(spots);
      const what = pick(['rows', 'rows', 'rows', 'columns'] as const);
      return {
        what: `delete the ${what} of ${said(spot)}`,
        steps: [['delete', INPUTS, what, String(what === 'rows' ? spot.row - 1 : spot.column), '1']],
      };
    },
    () => {
      const spot = pick(filled);
      const code = pick(['0.00%', 'YYYY-MM-DD', '@', '0', '0.00E+00', '# ##0.00 "mm"', '[HH]:MM']);
      const steps: Step[] = [['format', INPUTS, spot.at, code]];
      if (random() < 0.5 && spot.value !== null) steps.push(['type', INPUTS, spot.at, String(spot.value)]);
      return {
        what: `format ${said(spot)} as ${code}${steps.length > 1 ? ' and type it again' : ''}`,
        steps,
      };
    },
    () => ({
      what: 'rename all of the first sheets, add one, write a note',
      steps: [
        ['rename', 'Feed', 'Answer'],
        ['rename', INPUTS, "Bob's inputs"],
        ['sheet', 'Prices', '2'],
        ['type', 'Prices', 'A1', '=12*2'],
        ['note', "Bob's inputs", pick(spots).at, 'ask the customer'],
      ],
    }),
  ];
  return pick(of === 'cells' ? cells : sheets)();
}
