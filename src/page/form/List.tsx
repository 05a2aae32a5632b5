/** A list of parts: points, rows of a table, runs; members can be added, doubled, moved and removed. */
import type { ComponentType } from 'preact';
import { useContext } from 'preact/hooks';
import { keyText, type Path } from '../../design/problems.ts';
import { idOf, labelOf, placeOf, problemsAt, valueAt } from '../place.ts';
import type { Schema } from '../protocol.ts';
import { GoContext, useBench, useBenchState } from '../state/use.ts';
import { fieldsOf } from './schema.ts';
import { listOf, startOf } from './start.ts';

/** What one member of a list is called. */
const MEMBERS: Readonly<Record<string, string>> = {
  points: 'point',
  coils: 'coil',
  dwell: 'row',
  feed: 'run',
  return: 'run',
  curve: 'point of the curve',
  rerating: 'row',
  derating: 'row',
  measured: 'reading',
  own: 'value or rule',
};

/** Keys by which a member of a list goes. */
const NAMES = ['run', 'name', 'id'] as const;
/** Members with more fields than this are folded. Arbitrary: what fits beside each other on a screen. */
const FOLDED = 6;

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
  const go = useContext(GoContext);
  const { tree, problems } = useBenchState('tree', 'problems');
  const found = valueAt(tree.value, path);
  const members: unknown[] = Array.isArray(found) ? found : [];
  const [least, most] = [schema.minItems ?? 0, schema.maxItems ?? Number.POSITIVE_INFINITY];
  const one = MEMBERS[String(path.at(-1))] ?? labelOf(path.at(-1) ?? '');
  const key =
    placeOf(path) === 'measured'
      ? undefined
      : NAMES.find((name) => typeof valueAt(members[0], [name]) === 'string');
  const folds = fieldsOf(schema.items as Schema).length > FOLDED;
  const nameOf = (member: unknown, i: number): string => {
    const own = key === undefined ? undefined : valueAt(member, [key]);
    return typeof own === 'string' ? own : `${one} ${i + 1}`;
  };
  const add = (): void => {
    const at = placeFor(path, members);
    if (members.length === 0) bench.edit(path, listOf(path));
    else bench.rearrange(path, { put: startOf(path, members.length), at });
    go({ key: keyText([...path, at]) });
  };
  const double = (i: number): void => {
    const names = members.map(nameOf);
    bench.rearrange(path, { double: i, key: key ?? '', name: another(nameOf(members[i], i), names) });
    go({ key: keyText([...path, i + 1]) });
  };
  /** The moved member stays as open as it is, and is gone on with. */
  const move = (i: number, to: number): void => {
    const [a, b] = [i, to].map((at) => document.getElementById(idOf([...path, at])));
    if (a instanceof HTMLDetailsElement && b instanceof HTMLDetailsElement)
      [a.open, b.open] = [b.open, a.open];
    bench.rearrange(path, { move: i, to });
    const last = to < i ? to === 0 : to === members.length - 1;
    const act = to < i === last ? 'down' : 'up';
    go({ key: keyText([...path, to]), act });
  };
  const remove = (i: number): void => {
    bench.edit(members.length === 1 ? path : [...path, i], undefined);
    const next = Math.min(i, members.length - 2);
    go({ key: keyText(next < 0 ? path : [...path, next]) });
  };
  return (
    <div class="list" id={members.length === 0 ? idOf(path) : undefined} tabIndex={-1}>
      {members.map((member, i) => {
        const name = nameOf(member, i);
        const wrong = problemsAt(problems, [...path, i], true).length;
        const inner = (
          <>
            <Member path={[...path, i]} schema={schema.items as Schema} />
            <p class="buttons">
              <Act what="up" of={name} off={i === 0} act={() => move(i, i - 1)} />
              <Act what="down" of={name} off={i === members.length - 1} act={() => move(i, i + 1)} />
              <Act what="double" of={name} off={members.length >= most} act={() => double(i)} />
              <Act what="remove" of={name} off={members.length <= least} act={() => remove(i)} />
            </p>
          </>
        );
        // A member is its place in the text: its name may be changing.
        return folds ? (
          <details class="member" key={i} id={idOf([...path, i])}>
            <summary>
              {name} <span class="quiet">{gistOf(member)}</span>
              {wrong > 0 ? <span class="count">{wrong} to mend</span> : null}
            </summary>
            {inner}
          </details>
        ) : (
          <fieldset class="member" key={i} id={idOf([...path, i])} tabIndex={-1}>
            <legend>{name}</legend>
            {inner}
          </fieldset>
        );
      })}
      {members.length < most ? (
        <button type="button" class="small" disabled={!tree.sound} onClick={add}>
          add a {one}
        </button>
      ) : null}
    </div>
  );
}

interface ActProps {
  readonly what: 'up' | 'down' | 'double' | 'remove';
  readonly of: string;
  readonly off: boolean;
  readonly act: () => void;
}

const SAID = { up: 'move up', down: 'move down', double: 'duplicate', remove: 'remove' } as const;

function Act({ what, of, off, act }: ActProps) {
  const { tree } = useBenchState('tree');
  return (
    <button type="button" class="small" data-act={what} disabled={off || !tree.sound} onClick={act}>
      {SAID[what]}
      <span class="of"> {of}</span>
    </button>
  );
}

/** A new run of the feed goes before those that divide: what has divided does not join again. */
function placeFor(path: Path, members: readonly unknown[]): number {
  if (path.at(-1) !== 'feed') return members.length;
  const divided = members.findIndex((member) => valueAt(member, ['carries']) !== 'all');
  return divided < 0 ? members.length : divided;
}

/** A name that nothing has yet: `main 2`. */
function another(name: string, names: readonly string[]): string {
  const stem = name.replace(/ \d+$/, '');
  for (let i = 2; ; i++) if (!names.includes(`${stem} ${i}`)) return `${stem} ${i}`;
}

/** What a folded member says of itself: size and length of a run, all of a reading. */
function gistOf(member: unknown): string {
  const values =
    valueAt(member, ['what']) === undefined
      ? ['gauge', 'length'].map((key) => valueAt(member, [key]))
      : Object.values(member as object);
  return values.filter((value) => typeof value === 'string' || typeof value === 'number').join(', ');
}
