/**
 * One field of the design in a row: its name with the unit, and its entry. Its help, and what is wrong with it in the words of
 * the command line, stand in the place below the form, so that nothing moves while somebody types.
 */
import { useContext, useEffect, useRef, useState } from 'preact/hooks';
import { printSize } from '../../basis/print.ts';
import type { Path, Problem } from '../../design/problems.ts';
import { idOf, problemsAt, valueAt } from '../place.ts';
import type { Schema } from '../protocol.ts';
import { shopOf } from '../state/bench.ts';
import { useBench, useBenchState, useOf, useUnits } from '../state/use.ts';
import { choicesAt, infoAt, titleOf, unitOf, withUnit } from './info.ts';
import { kindOf } from './schema.ts';
import { type Taken, takenAt } from './taken.ts';
import { TrayContext } from './tray.ts';
import { asTyped, asWritten } from './written.ts';

interface FieldProps {
  readonly path: Path;
  readonly schema: Schema;
  readonly required: boolean;
  /** In the place of the name. */
  readonly label?: string;
}

/** What is wrong with a field is shown after a pause in typing, or when it is left [ms]. Arbitrary. */
const PAUSE = 900;
/** Leads from a list to any other value. */
const OTHER = 'other …';

export function Field({ path, schema, required, label }: FieldProps) {
  const bench = useBench();
  const { tree, problems, form, view } = useBenchState('tree', 'problems', 'form', 'view');
  const shop = useOf(shopOf);
  const us = useUnits() === 'us';
  const help = useContext(TrayContext);
  // What is typed stays as it is while the person is in the field, whatever the text makes of it.
  const [draft, setDraft] = useState<string | null>(null);
  // Anything may be typed; as long as somebody is at it, what can be picked does not take the place of the entry.
  const [free, setFree] = useState(false);
  const entry = useRef<HTMLInputElement>(null);
  useEffect(() => {
    if (free) entry.current?.focus();
  }, [free]);
  const kind = kindOf(schema);
  // Values by run or coil are those of the part that holds them.
  const info = infoAt(form, path) ?? (label === undefined ? undefined : infoAt(form, path.slice(0, -1)));
  const unit = unitOf(info, us);
  const id = idOf(path);
  const shown = draft ?? asTyped(valueAt(tree.value, path));
  // The value that holds where the field is left empty.
  const taken = takenAt(tree.value, path, shop, view, us);
  const needed = required && taken?.part !== true;
  const found = useLater(problemsAt(problems, path, kind.kind === 'series'), draft);
  const choices: readonly (string | number)[] =
    kind.kind === 'choice' ? kind.words : choicesAt(form, tree.value, path, view);
  const name = titleOf(label === undefined ? info : { ...info, label }, path, us);
  const take = (typed: string): void => {
    setDraft(typed);
    // A key that must be there stays, so that the message speaks of the value.
    bench.edit(path, asWritten(withUnit(typed, unit), kind) ?? (needed ? '' : undefined));
  };
  const leave = (): void => {
    setDraft(null);
    bench.settle();
  };
  const common = {
    id,
    value: shown,
    required: needed,
    disabled: !tree.sound,
    'aria-invalid': found.length > 0,
    'aria-describedby': `${id}-wrong tray`,
    onFocus: () => help({ path, name, text: textOf(info?.help ?? schema.description ?? '', schema, taken) }),
    onBlur: leave,
  };
  const listed = choices.some((choice) => String(choice) === shown);
  const picks = choices.length > 0 && !free && (kind.kind === 'choice' || listed || shown === '');
  return (
    <div class={`field ${found.length > 0 ? 'wrong' : ''}`}>
      <label for={id}>{name}</label>
      {picks ? (
        <select
          {...common}
          onChange={(event) => {
            const { value } = event.currentTarget;
            if (value === OTHER) setFree(true);
            else take(value);
          }}
        >
          {listed ? null : <option value={shown}>{shown === '' ? left(taken) : shown}</option>}
          {shown !== '' && !required ? <option value="">–</option> : null}
          {choices.map((choice) => (
            <option key={choice} value={choice}>
              {printSize(String(choice))}
            </option>
          ))}
          {kind.kind === 'choice' ? null : <option value={OTHER}>{OTHER}</option>}
        </select>
      ) : (
        <input
          {...common}
          ref={entry}
          type="text"
          autocomplete="off"
          spellcheck={false}
          {...(draft === null ? {} : { 'data-typed': '' })}
          inputMode={kind.kind === 'number' ? 'numeric' : 'text'}
          placeholder={taken?.value ?? String(schema.default ?? '')}
          onInput={(event) => {
            setFree(true);
            take(event.currentTarget.value);
          }}
          onBlur={() => {
            setFree(false);
            leave();
          }}
        />
      )}
      <span class="of" id={`${id}-wrong`}>
        {found.map((p) => `${p.found}; ${p.taken}`).join('. ')}
      </span>
    </div>
  );
}

/** What a list shows that is left as it is. */
const left = (taken: Taken | null): string => (taken === null ? '–' : `– ${printSize(taken.value)}`);

function textOf(help: string, schema: Schema, taken: Taken | null): string {
  if (taken !== null) return `${help} Left out: ${taken.value}, ${taken.why}.`;
  return schema.default === undefined || help.includes('Left out')
    ? help
    : `${help} Left out: ${schema.default}.`;
}

/** Problems of a field in which somebody types come after a pause; they go at once. */
function useLater(found: readonly Problem[], draft: string | null): readonly Problem[] {
  const [ripe, set] = useState(true);
  useEffect(() => {
    if (draft === null) {
      set(true);
      return;
    }
    set(false);
    const clock = setTimeout(() => set(true), PAUSE);
    return () => clearTimeout(clock);
  }, [draft]);
  return ripe || draft === null ? found : [];
}
