/** A field that takes one value, or a table or map of values in its place. */
import type { ComponentType } from 'preact';
import type { Path } from '../../design/problems.ts';
import type { Plain } from '../../saved/document.ts';
import type { Schema } from '../protocol.ts';
import { useBench, useBenchState } from '../state/use.ts';
import { Field } from './Field.tsx';
import { List, type PartProps } from './List.tsx';
import { labelOf, valueAt } from './place.ts';
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

export function Either({ path, description, single, several, required, member }: EitherProps) {
  const bench = useBench();
  const { tree, view } = useBenchState();
  const value = valueAt(tree.value, path);
  const name = labelOf(path.at(-1) ?? '');
  const many = typeof value === 'object' && value !== null;
  // One length for each coil makes sense where each has a conductor of its own.
  const perCoil = several.items === undefined;
  const coils = view?.json.coil.ids ?? [];
  const offered =
    !perCoil || (valueAt(tree.value, [...path.slice(0, -1), 'carries']) === 'each' && coils.length > 0);

  const toMany = (): Plain => {
    const one = typeof value === 'string' ? value : '';
    if (perCoil) return Object.fromEntries(coils.map((id) => [id, one]));
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
          <button
            type="button"
            class="small"
            disabled={!tree.sound}
            onClick={() => bench.edit(path, toMany())}
          >
            {perCoil ? `a ${name} for each coil` : `a table of ${name} by supply`}
          </button>
        ) : null}
      </>
    );
  return (
    <fieldset class="several">
      <legend>{perCoil ? `${name} for each coil` : `${name} by supply`}</legend>
      {perCoil ? (
        <div class="fields">
          {Object.keys(value).map((key) => (
            <Field
              key={key}
              path={[...path, key]}
              schema={several.additionalProperties as Schema}
              required
              label={`coil ${key}`}
            />
          ))}
        </div>
      ) : (
        <List path={path} schema={several} member={member} />
      )}
      <button type="button" class="small" disabled={!tree.sound} onClick={() => bench.edit(path, toOne())}>
        one {name} for all
      </button>
    </fieldset>
  );
}
