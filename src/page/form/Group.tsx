/** The fields of one part: what must be given and what is given, then what may be. */
import { useContext, useId } from 'preact/hooks';
import { keyText, type Path } from '../../design/problems.ts';
import { idOf, labelOf, placeOf, problemsAt, valueAt } from '../place.ts';
import { GoContext, useBench, useBenchState } from '../state/use.ts';
import { Either } from './Either.tsx';
import { Field } from './Field.tsx';
import { List, type PartProps } from './List.tsx';
import { ByRun } from './Map.tsx';
import { givenOf, mayAdd, ONE_OF } from './offers.ts';
import { fieldsOf, kindOf, type Named } from './schema.ts';
import { listOf, startOf } from './start.ts';

export function Group({ path, schema }: PartProps) {
  const { tree, form } = useBenchState('tree', 'form');
  const there = ({ key }: Named): boolean => tree.has([...path, key]);
  const fields = fieldsOf(schema).filter(
    (field) => field.required || there(field) || mayAdd(form, tree.value, path, field.key, field.schema),
  );
  const inner = ({ schema: one }: Named): boolean => ['group', 'list', 'map'].includes(kindOf(one).kind);
  const simple = fields.filter((field) => !inner(field));
  const here = (field: Named): boolean => field.required || there(field);
  const open = simple.filter((field) => !here(field));
  return (
    <>
      <Wrong path={path} />
      <OneOf path={path} />
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
  const { problems } = useBenchState('problems');
  const found = path.length === 0 ? [] : problemsAt(problems, path);
  return found.length === 0 ? null : (
    <p class="problem">{found.map((p) => `${p.found}; ${p.taken}`).join('. ')}</p>
  );
}

/** Of parts of which exactly one is given, which one. */
function OneOf({ path }: { readonly path: Path }) {
  const bench = useBench();
  const { tree } = useBenchState('tree');
  const id = useId();
  const choice = ONE_OF[placeOf(path)];
  const given = givenOf(tree.value, path);
  if (choice === undefined || given === null) return null;
  return (
    <div class="field">
      <label for={id}>{choice.title}</label>
      <select
        id={id}
        value={given}
        disabled={!tree.sound}
        onChange={(event) => {
          const key = event.currentTarget.value;
          bench.editAll([
            { key: [...path, key], value: startOf([...path, key], 0) },
            ...choice.keys
              .filter((other) => other !== key && tree.has([...path, other]))
              .map((other) => ({ key: [...path, other], value: undefined })),
          ]);
        }}
      >
        {choice.keys.map((key) => (
          <option key={key} value={key}>
            {labelOf(key)}
          </option>
        ))}
      </select>
    </div>
  );
}

function Part({ path, field: { schema, required } }: { readonly path: Path; readonly field: Named }) {
  const kind = kindOf(schema);
  switch (kind.kind) {
    case 'group':
      return <Optional path={path} schema={schema} required={required} />;
    case 'list':
      return <Listed path={path} schema={schema} required={required} />;
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
      return <ByRun path={path} schema={kind.of} member={Group} />;
    default:
      return <Field path={path} schema={schema} required={required} />;
  }
}

interface OptionalProps extends PartProps {
  readonly required: boolean;
}

/** Puts a part in. */
function Add({ path, schema, words = 'add' }: PartProps & { readonly words?: string }) {
  const bench = useBench();
  const go = useContext(GoContext);
  const { tree } = useBenchState('tree');
  const id = useId();
  const add = (): void => {
    bench.edit(path, kindOf(schema).kind === 'list' ? listOf(path) : startOf(path, 0));
    go({ key: keyText(path) });
  };
  return (
    <button
      type="button"
      class="small"
      // The field of a word has the id where it stands beside this.
      id={words === 'add' ? idOf(path) : undefined}
      disabled={!tree.sound}
      aria-describedby={id}
      title={schema.description}
      onClick={add}
    >
      {words} {labelOf(path.at(-1) ?? '')}
      <span class="of" id={id}>
        {schema.description}
      </span>
    </button>
  );
}

/** A list that a part may have. */
function Listed({ path, schema, required }: OptionalProps) {
  const { tree } = useBenchState('tree');
  if (!required && !tree.has(path)) return <Add path={path} schema={schema} />;
  return (
    <fieldset class="part">
      <legend>{labelOf(path.at(-1) ?? '')}</legend>
      <List path={path} schema={schema} member={Group} />
    </fieldset>
  );
}

/** A part that a design may have: with a way to put it in and to take it out. */
function Optional({ path, schema, required }: OptionalProps) {
  const bench = useBench();
  const go = useContext(GoContext);
  const { tree } = useBenchState('tree');
  const name = labelOf(path.at(-1) ?? '');
  const remove = (): void => {
    bench.edit(path, undefined);
    go({ key: keyText(path) });
  };
  if (!tree.has(path)) return <Add path={path} schema={schema} />;
  // A word in the place of the part, such as unknown.
  const word = typeof valueAt(tree.value, path) === 'string';
  // Of parts of which one is given another is chosen above.
  const chosen = ONE_OF[placeOf(path.slice(0, -1))]?.keys.includes(String(path.at(-1)));
  return (
    <fieldset class="part" id={word ? undefined : idOf(path)} tabIndex={-1}>
      <legend>{name}</legend>
      {word ? (
        <>
          <Field path={path} schema={{ description: schema.description ?? '' }} required={required} />
          <Add path={path} schema={schema} words="describe" />
        </>
      ) : (
        <Group path={path} schema={schema} />
      )}
      {required || word || chosen ? null : (
        <button type="button" class="small" disabled={!tree.sound} onClick={remove}>
          remove {name}
        </button>
      )}
    </fieldset>
  );
}
