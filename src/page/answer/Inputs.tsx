/** What the answer was worked out from, for the printed page: the design in a few lines, and by what it was made. */
import { asTyped } from '../form/written.ts';
import { labelOf } from '../place.ts';
import { useBenchState } from '../state/use.ts';

declare const COILFEED_VERSION: string;

/** Said elsewhere on the page, or of no weight in the answer. */
const APART = [
  'coilfeed',
  'title',
  'notes',
  'date',
  'shop',
  'kit',
  'measured',
  'instruments',
  'original',
  'sizes',
  'sweep',
];

export function Inputs() {
  const { tree, history } = useBenchState('tree', 'history');
  const parts = Object.entries((tree.value ?? {}) as object).filter(([key]) => !APART.includes(key));
  const { date } = (tree.value ?? {}) as { readonly date?: unknown };
  return (
    <section class="inputs" aria-label="Inputs">
      <h3>Inputs</h3>
      {parts.map(([key, value]) => (
        <p key={key}>
          <b>{labelOf(key)}</b> {wordsOf(value)}
        </p>
      ))}
      <p>
        {asTyped(date) === '' ? '' : `State of ${asTyped(date)}. `}Computed by coilfeed {COILFEED_VERSION}{' '}
        from {history.now.file}, printed {new Date().toISOString().slice(0, 10)}.
      </p>
    </section>
  );
}

type Entries = Readonly<Record<string, unknown>>;
const isPart = (value: unknown): value is Entries =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** `cylinders 6, firing order 1, 5, 3`; of a list what all members have alike once, then each by its name. */
function wordsOf(value: unknown): string {
  if (isPart(value)) return entriesOf(value);
  if (!Array.isArray(value) || !value.every(isPart)) return asTyped(value);
  const [first = {}] = value;
  const alike = Object.keys(first).filter(
    (key) =>
      value.length > 1 && value.every((one) => JSON.stringify(one[key]) === JSON.stringify(first[key])),
  );
  const only = (part: Entries, wanted: boolean): Entries =>
    Object.fromEntries(Object.entries(part).filter(([key]) => alike.includes(key) === wanted));
  return [
    ...(alike.length === 0 ? [] : [`all ${entriesOf(only(first, true))}`]),
    ...value.map((one) => entriesOf(only(one, false))),
  ].join(' | ');
}

const entriesOf = (part: Entries): string =>
  Object.entries(part)
    .map(([key, inner]) =>
      key === 'run' || key === 'name'
        ? asTyped(inner)
        : isPart(inner)
          ? `${labelOf(key)} (${wordsOf(inner)})`
          : `${labelOf(key)} ${wordsOf(inner)}`,
    )
    .join(', ');
