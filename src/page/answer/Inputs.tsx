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

/** `cylinders 6; firing order 1, 5, 3`; members of a list one after the other. */
function wordsOf(value: unknown): string {
  if (Array.isArray(value) && value.some((one) => typeof one === 'object'))
    return value.map(wordsOf).join(' | ');
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return asTyped(value);
  return Object.entries(value)
    .map(([key, inner]) =>
      typeof inner === 'object' && inner !== null && !Array.isArray(inner)
        ? `${labelOf(key)} (${wordsOf(inner)})`
        : `${labelOf(key)} ${wordsOf(inner)}`,
    )
    .join(', ');
}
