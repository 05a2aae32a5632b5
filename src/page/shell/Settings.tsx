/** How the page looks, and what it keeps. */
import { useState } from 'preact/hooks';
import type { Stored, Wish } from '../state/storage.ts';
import { useBench, useBenchState } from '../state/use.ts';

export function Settings() {
  const bench = useBench();
  const { system, look, unkept } = useBenchState('system', 'look', 'unkept');
  const [cleared, clear] = useState(false);
  return (
    <div class="settings">
      <label>
        Show in{' '}
        <select
          value={system}
          onChange={(event) => bench.prefer({ system: event.currentTarget.value as Wish })}
        >
          <option value="design">the units of the design</option>
          <option value="metric">metric units</option>
          <option value="us">US units</option>
          <option value="both">both</option>
        </select>
      </label>
      <label>
        Look{' '}
        <select
          value={look}
          onChange={(event) => bench.prefer({ look: event.currentTarget.value as Stored['look'] })}
        >
          <option value="auto">as the system</option>
          <option value="light">light</option>
          <option value="dark">dark</option>
        </select>
      </label>
      <span>
        <button
          type="button"
          onClick={() => {
            bench.clear();
            clear(true);
          }}
        >
          Forget what is stored here
        </button>{' '}
        <span role="status" class="quiet">
          {unkept
            ? 'This browser keeps nothing: save the design as a file.'
            : cleared
              ? 'Forgotten; the next change is stored again.'
              : 'The design is kept in this browser only.'}
        </span>
      </span>
    </div>
  );
}
