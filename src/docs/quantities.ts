/** The reference page of all quantities of the model, by subject. */
import { namesIn } from '../basis/formula.ts';
import { type Axis, type Quantities, type Quantity, quantity } from '../basis/quantity.ts';
import { printCitation } from '../basis/sources.ts';
import { convert, printUnit } from '../basis/units.ts';
import { SUBJECTS } from '../model/model.ts';
import { code, digits, grid, MADE } from './markdown.ts';

const HEAD = `# Quantities of the model

Every quantity, once, by subject, in the order in which they are declared. How they hang together is told in
[method.md](method.md); the published tables stand in [tables.md](tables.md); the notation of the formulas is in
[DEVELOPERS.md](../DEVELOPERS.md#how-a-formula-is-written).

Formulas are in the unit of the column "unit"; where a second one follows in brackets, people read and write the
quantity in that one. A quantity with something in "for each" has a value for each member of these axes; what stands
behind × is laid out in columns. A source says where the relation or the value is from and how it was seen. The last
column leads to the quantities that a formula names.`;

const TITLES = [
  'symbol',
  'id',
  'what it is',
  'for each',
  'unit',
  'formula or value',
  'source',
  'note',
  'uses',
];

/** Text of `docs/quantities.md`. */
export function quantitiesPage(): string {
  const subjects = Object.entries(SUBJECTS).map(
    ([subject, quantities]: [string, Quantities]) =>
      `## ${subject}\n\n${grid(
        TITLES,
        Object.entries(quantities).map(([id, q]) => row(id, quantity(q))),
      )}`,
  );
  return `${[MADE, HEAD, ...subjects].join('\n\n')}\n`;
}

const row = (id: string, q: Quantity): string[] => [
  q.symbol,
  `<a id="${id}"></a>${code(id)}`,
  q.label,
  axes(q),
  units(q),
  content(q),
  q.source === undefined ? '' : printCitation(q.source),
  [q.note ?? '', range(q)].filter(Boolean).join(' '),
  q.kind === 'formula'
    ? namesIn(q.formula)
        .map((name) => `[${name}](#${name})`)
        .join(', ')
    : '',
];

const axisName = (axis: Axis): string => axis.replaceAll('_', ' ');

const axes = (q: Quantity): string =>
  (q.per ?? []).map(axisName).join(', ') + (q.across === undefined ? '' : ` × ${axisName(q.across)}`);

const units = (q: Quantity): string => {
  if (q.unit === 'text') return 'text';
  return q.shown === undefined ? printUnit(q.unit) : `${printUnit(q.unit)} (${printUnit(q.shown)})`;
};

/** What the value is, or where it comes from. */
function content(q: Quantity): string {
  switch (q.kind) {
    case 'formula':
      return code(q.formula);
    case 'constant':
      return typeof q.value === 'string' ? q.value : asShown(q, q.value);
    case 'input':
      return `given by the design: ${code(q.path)}`;
    case 'structure':
      return 'follows from who carries and fires whom in the design';
    case 'column':
      return `table of ${q.values.length} rows`;
  }
}

/** A number in the unit in which people read it. */
const asShown = (q: Quantity, value: number): string => {
  const unit = q.shown ?? q.unit;
  return `${digits(value * convert(q.unit, unit))} ${printUnit(unit)}`.trim();
};

const range = (q: Quantity): string =>
  q.range === undefined
    ? ''
    : `Taken from ${digits(q.range[0])} to ${digits(q.range[1])} ${printUnit(q.unit)}`.trimEnd().concat('.');
