/** A list of parts: points, rows of a table, runs. */
import type { ComponentType } from 'preact';
import type { Path } from '../../design/problems.ts';
import type { Schema } from '../protocol.ts';
import { useBench, useBenchState } from '../state/use.ts';
import { labelOf, valueAt } from './place.ts';
import { startOf } from './start.ts';

/** What one member of a list is called. */
const MEMBERS: Readonly<Record<string, string>> = {
  points: 'point',
  coils: 'coil',
  dwell: 'row',
  feed: 'run',
  return: 'run',
};

/** Keys by which a member of a list goes. */
const NAMES = ['run', 'name', 'id'] as const;

export interface PartProps {
  readonly path: Path;
  readonly schema: Schema;
}

interface ListProps extends PartProps {
  /** Shows the fields of one member: the group of fields, which itself shows lists. */
  readonly member: ComponentType<PartProps>;
}

export function List({ path, schema, member: Member }: ListProps) {
  const bench = useBench();
  const { tree } = useBenchState();
  const found = valueAt(tree.value, path);
  const members: unknown[] = Array.isArray(found) ? found : [];
  const one = MEMBERS[String(path.at(-1))] ?? labelOf(path.at(-1) ?? '');
  const nameOf = (member: unknown, i: number): string => {
    const own = NAMES.map((key) => valueAt(member, [key])).find((name) => typeof name === 'string');
    return own === undefined ? `${one} ${i + 1}` : String(own);
  };
  return (
    <>
      {members.map((member, i) => (
        // A member is its place in the text: its name may be changing.
        <fieldset class="member" key={i}>
          <legend>{nameOf(member, i)}</legend>
          <Member path={[...path, i]} schema={schema.items as Schema} />
          <button
            type="button"
            class="small"
            disabled={!tree.sound || members.length <= (schema.minItems ?? 0)}
            onClick={() => bench.edit([...path, i], undefined)}
          >
            remove {nameOf(member, i)}
          </button>
        </fieldset>
      ))}
      <button
        type="button"
        class="small"
        disabled={!tree.sound}
        onClick={() => bench.edit([...path, members.length], startOf(path, members.length))}
      >
        add a {one}
      </button>
    </>
  );
}
