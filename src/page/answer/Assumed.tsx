/** What was taken where the design says nothing, and the cautions. */
import { CAUTIONS } from '../../writers/cautions.ts';
import type { View } from '../protocol.ts';
import { useShown } from '../state/use.ts';

export function Assumed({ view }: { readonly view: View }) {
  const { assumed } = useShown(view);
  return assumed.length === 0 ? null : (
    <details>
      <summary>{assumed.length} values taken where the design says nothing</summary>
      <ul>
        {assumed.map(({ path, value, why }) => (
          <li key={path}>
            <code>{path}</code>: {value} ({why})
          </li>
        ))}
      </ul>
    </details>
  );
}

export const Cautions = () => (
  <section class="cautions" aria-labelledby="cautions">
    <h3 id="cautions">Cautions</h3>
    <ul>
      {CAUTIONS.map((caution) => (
        <li key={caution}>{caution}</li>
      ))}
    </ul>
  </section>
);
