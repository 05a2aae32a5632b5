/** The design as forms, one section for each part of the file. */

import { useBench, useBenchState } from '../state/use.ts';
import { Field } from './Field.tsx';
import { Group } from './Group.tsx';
import { List } from './List.tsx';
import { labelOf, problemsAt } from './place.ts';
import { fieldsOf, kindOf, type Named } from './schema.ts';
import { startOf } from './start.ts';

/**
 * Written in the text only: the version, and what belongs to papers, to readings and to a comparison, and not to the
 * calculation that the page shows.
 */
const TEXT_ONLY = ['coilfeed', 'kit', 'measured', 'tolerance', 'original'];
/** Open when the page opens: what a person changes most. */
const OPEN = ['coil', 'feed'];

export function Sections() {
  const { schema, tree } = useBenchState();
  if (schema === null) return <p class="quiet">The forms are being made …</p>;
  const fields = fieldsOf(schema).filter(({ key }) => !TEXT_ONLY.includes(key));
  const lines = fields.filter(({ schema: one }) => kindOf(one).kind === 'text');
  return (
    <>
      {tree.sound ? null : (
        <p class="problem">
          The text cannot be read as it is, so the forms wait: correct it in the text view.
        </p>
      )}
      <div class="fields wide">
        {lines.map(({ key, schema: one, required }) => (
          <Field key={key} path={[key]} schema={one} required={required} />
        ))}
      </div>
      {fields
        .filter((field) => !lines.includes(field))
        .map((field) => (
          <Section key={field.key} field={field} />
        ))}
    </>
  );
}

function Section({ field: { key, schema, required } }: { readonly field: Named }) {
  const bench = useBench();
  const { tree, problems } = useBenchState();
  const wrong = problemsAt(problems, [key], true).length;
  const there = required || tree.has([key]);
  return (
    <details class="section" open={OPEN.includes(key)}>
      <summary>
        <h3>{labelOf(key)}</h3>
        {wrong > 0 ? <span class="count">{wrong} to mend</span> : null}
        {there ? null : <span class="quiet">not given</span>}
      </summary>
      <p class="about">{schema.description}</p>
      {kindOf(schema).kind === 'list' ? (
        <List path={[key]} schema={schema} member={Group} />
      ) : there ? (
        <>
          <Group path={[key]} schema={schema} />
          {required ? null : (
            <button
              type="button"
              class="small"
              disabled={!tree.sound}
              onClick={() => bench.edit([key], undefined)}
            >
              remove {labelOf(key)}
            </button>
          )}
        </>
      ) : (
        <button
          type="button"
          class="small"
          disabled={!tree.sound}
          onClick={() => bench.edit([key], startOf([key], 0))}
        >
          add {labelOf(key)}
        </button>
      )}
    </details>
  );
}
