/** Values by run: a field, or a group of fields, for each run of the design. */
import type { ComponentType } from 'preact';
import { idOf, labelOf, valueAt } from '../place.ts';
import { useBenchState } from '../state/use.ts';
import { Field } from './Field.tsx';
import { infoAt } from './info.ts';
import type { PartProps } from './List.tsx';
import { kindOf } from './schema.ts';

interface MapProps extends PartProps {
  readonly member: ComponentType<PartProps>;
}

export function ByRun({ path, schema, member: Member }: MapProps) {
  const { tree, form } = useBenchState('tree', 'form');
  const runs = ['feed', 'return'].flatMap((side) => {
    const list = valueAt(tree.value, [side]);
    return Array.isArray(list) ? list.map((run) => String(valueAt(run, ['run']) ?? '')) : [];
  });
  return (
    <fieldset class="several" id={idOf(path)} tabIndex={-1}>
      <legend>{infoAt(form, path)?.label ?? labelOf(path.at(-1) ?? '')}</legend>
      {runs.map((run) =>
        kindOf(schema).kind === 'group' ? (
          <fieldset class="part" key={run}>
            <legend>{run}</legend>
            <Member path={[...path, run]} schema={schema} />
          </fieldset>
        ) : (
          <Field key={run} path={[...path, run]} schema={schema} required={false} label={run} />
        ),
      )}
    </fieldset>
  );
}
