/** The fields of one part: what must be given and what is given, then what may be. */
import { useId } from 'preact/hooks';
import type { Path } from '../../design/problems.ts';
import type { Schema } from '../protocol.ts';
import { useBench, useBenchState } from '../state/use.ts';
import { Either } from './Either.tsx';
import { Field } from './Field.tsx';
import { List, type PartProps } from './List.tsx';
import { labelOf, problemsAt, valueAt } from './place.ts';
import { fieldsOf, kindOf, type Named } from './schema.ts';
import { startOf } from './start.ts';

export function Group({ path, schema }: PartProps) {
  const { tree } = useBenchState();
  const fields = fieldsOf(schema);
  const here = ({ key, required }: Named): boolean => required || tree.has([...path, key]);
  const inner = ({ schema: one }: Named): boolean => ['group', 'list', 'map'].includes(kindOf(one).kind);
  const simple = fields.filter((field) => !inner(field));
  const open = simple.filter((field) => !here(field));
  return (
    <>
      <Wrong path={path} />
      <div class="fields">
        {simple.filter(here).map((field) => (
          <Part key={field.key} path={[...path, field.key]} field={field} />
        ))}
      </div>
      {open.length > 0 ? (
        <details class="more">
          <summary>
            {open.length} more that may be given
            <span class="of"> for {labelOf(nameOf(tree.value, path))}</span>
          </summary>
          <div class="fields">
            {open.map((field) => (
              <Part key={field.key} path={[...path, field.key]} field={field} />
            ))}
          </div>
        </details>
      ) : null}
      {fields.filter(inner).map((field) => (
        <Part key={field.key} path={[...path, field.key]} field={field} />
      ))}
    </>
  );
}

const nameOf = (root: unknown, path: Path): string | number => {
  const own = valueAt(root, [...path, 'run']);
  return typeof own === 'string' ? own : (path.at(-1) ?? '');
};

/** What is wrong with a part as a whole. */
function Wrong({ path }: { readonly path: Path }) {
  const { problems } = useBenchState();
  const found = path.length === 0 ? [] : problemsAt(problems, path);
  return found.length === 0 ? null : (
    <p class="problem">{found.map((p) => `${p.found}; ${p.taken}`).join('. ')}</p>
  );
}

function Part({ path, field: { schema, required } }: { readonly path: Path; readonly field: Named }) {
  const kind = kindOf(schema);
  switch (kind.kind) {
    case 'group':
      return <Optional path={path} schema={schema} required={required} />;
    case 'list':
      return <List path={path} schema={schema} member={Group} />;
    case 'either':
      return (
        <Either
          path={path}
          description={schema.description ?? ''}
          required={required}
          member={Group}
          {...kind}
        />
      );
    case 'map':
      return null;
    default:
      return <Field path={path} schema={schema} required={required} />;
  }
}

/** A part that a design may have: with a way to put it in and to take it out. */
export function Optional({
  path,
  schema,
  required,
}: {
  readonly path: Path;
  readonly schema: Schema;
  readonly required: boolean;
}) {
  const bench = useBench();
  const { tree } = useBenchState();
  const id = useId();
  const name = labelOf(path.at(-1) ?? '');
  if (!tree.has(path))
    return (
      <button
        type="button"
        class="small"
        disabled={!tree.sound}
        aria-describedby={id}
        onClick={() => bench.edit(path, startOf(path, 0))}
      >
        add {name}
        <span class="hint" id={id}>
          {schema.description}
        </span>
      </button>
    );
  // A word in the place of the part, such as unknown.
  if (typeof valueAt(tree.value, path) === 'string')
    return (
      <fieldset class="part">
        <legend>{name}</legend>
        <Field path={path} schema={{ description: schema.description ?? '' }} required={required} />
        <button
          type="button"
          class="small"
          disabled={!tree.sound}
          onClick={() => bench.edit(path, startOf(path, 0))}
        >
          describe {name}
        </button>
      </fieldset>
    );
  return (
    <fieldset class="part">
      <legend>{name}</legend>
      <Group path={path} schema={schema} />
      {required ? null : (
        <button
          type="button"
          class="small"
          disabled={!tree.sound}
          onClick={() => bench.edit(path, undefined)}
        >
          remove {name}
        </button>
      )}
    </fieldset>
  );
}
