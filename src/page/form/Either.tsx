/** A field that takes one value, or a table or map of values in its place. */
import type { ComponentType } from 'preact';
import { useContext } from 'preact/hooks';
import { keyText, type Path } from '../../design/problems.ts';
import type { Plain } from '../../saved/document.ts';
import { idOf, labelOf, placeOf, valueAt } from '../place.ts';
import type { Schema } from '../protocol.ts';
import { GoContext, useBench, useBenchState } from '../state/use.ts';
import { Field } from './Field.tsx';
import { List, type PartProps } from './List.tsx';
import { startOf } from './start.ts';

interface EitherProps {
  readonly path: Path;
  readonly description: string;
  readonly single: Schema;
  readonly several: Schema;
  readonly required: boolean;
  /** Shows a row of the table. */
  readonly member: ComponentType<PartProps>;
}

/** How several values are laid out: rows by supply, or one for each coil or run. */
interface Several {
  readonly keys: readonly string[] | null;
  readonly each: string;
  readonly offer: string;
  readonly offered: boolean;
  readonly label: (key: string) => string;
}

export function Either({ path, description, single, several, required, member }: EitherProps) {
  const bench = useBench();
  const go = useContext(GoContext);
  const { tree } = useBenchState('tree');
  const value = valueAt(tree.value, path);
  const name = labelOf(path.at(-1) ?? '');
  const turn = (to: Plain): void => {
    bench.edit(path, to);
    go({ key: keyText(path) });
  };
  const many = typeof value === 'object' && value !== null;
  const { keys, each, offer, offered, label } = useSeveral(path, several);

  const toMany = (): Plain => {
    const one = typeof value === 'string' ? value : '';
    if (keys !== null) return Object.fromEntries(keys.map((id) => [id, one]));
    return [{ ...(startOf(path, 3) as object), ...(one === '' ? {} : { dwell: one }) } as Plain];
  };
  const toOne = (): Plain => {
    const first = Object.values((value ?? {}) as object)[0] as unknown;
    const inner = typeof first === 'object' && first !== null ? (first as { dwell?: unknown }).dwell : first;
    return typeof inner === 'string' ? inner : '';
  };
  if (!many)
    return (
      <>
        <Field
          path={path}
          schema={{ ...single, description: single.description ?? description }}
          required={required}
        />
        {offered ? (
          <button type="button" class="small" disabled={!tree.sound} onClick={() => turn(toMany())}>
            {offer}
          </button>
        ) : null}
      </>
    );
  return (
    <fieldset class="several" id={idOf(path)} tabIndex={-1}>
      <legend>{each}</legend>
      {keys === null ? (
        <List path={path} schema={several} member={member} />
      ) : (
        [...new Set([...keys, ...Object.keys(value)])].map((key) => (
          <Field
            key={key}
            path={[...path, key]}
            schema={several.additionalProperties as Schema}
            required={tree.has([...path, key])}
            label={label(key)}
          />
        ))
      )}
      <button type="button" class="small" disabled={!tree.sound} onClick={() => turn(toOne())}>
        one {name} for all
      </button>
    </fieldset>
  );
}

function useSeveral(path: Path, several: Schema): Several {
  const { tree, view } = useBenchState('tree', 'view');
  const name = labelOf(path.at(-1) ?? '');
  if (several.items !== undefined)
    return {
      keys: null,
      each: `${name} by supply`,
      offer: `a table of ${name} by supply`,
      offered: true,
      label: String,
    };
  const { design, json } = view ?? {};
  const byRun = placeOf(path).startsWith('kit.');
  const keys = byRun ? (design?.runs.map((run) => run.name) ?? []) : (json?.coil.ids ?? []);
  return {
    keys,
    each: `${name} for each ${byRun ? 'run' : 'coil'}`,
    offer: `a ${name} for each ${byRun ? 'run' : 'coil'}`,
    // One length for each coil makes sense where each has a conductor of its own.
    offered: keys.length > 0 && (byRun || valueAt(tree.value, [...path.slice(0, -1), 'carries']) === 'each'),
    label: (key) => (byRun ? key : `coil ${key}`),
  };
}
