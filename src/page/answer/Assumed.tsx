/** What was taken where the design says nothing, and the cautions. */
import { CAUTIONS } from '../../writers/cautions.ts';
import type { View } from '../protocol.ts';
import { useBenchState } from '../state/use.ts';
import { inUnits } from '../units.ts';

export function Assumed({ view: { json } }: { readonly view: View }) {
  const { system } = useBenchState();
  return json.assumed.length === 0 ? null : (
    <details>
      <summary>{json.assumed.length} values taken where the design says nothing</summary>
      <ul>
        {json.assumed.map(({ path, value, why }) => (
          <li key={path}>
            <code>{path}</code>: {inUnits(value, system)} ({why})
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
