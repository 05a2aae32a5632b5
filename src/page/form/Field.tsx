/** One field of the design: label, entry, hint, and what is wrong with it in the words of the command line. */
import { useState } from 'preact/hooks';
import type { Path } from '../../design/problems.ts';
import type { Schema } from '../protocol.ts';
import { useBench, useBenchState } from '../state/use.ts';
import { idOf, labelOf, problemsAt, valueAt } from './place.ts';
import { kindOf } from './schema.ts';
import { asTyped, asWritten } from './written.ts';

export interface FieldProps {
  readonly path: Path;
  readonly schema: Schema;
  readonly required: boolean;
  /** In the place of the key. */
  readonly label?: string;
}

export function Field({ path, schema, required, label }: FieldProps) {
  const bench = useBench();
  const { tree, problems } = useBenchState();
  // What is typed stays as it is while the person is in the field, whatever the text makes of it.
  const [draft, setDraft] = useState<string | null>(null);
  const kind = kindOf(schema);
  const id = idOf(path);
  const found = problemsAt(problems, path, kind.kind === 'series');
  const shown = draft ?? asTyped(valueAt(tree.value, path));
  const take = (typed: string): void => {
    setDraft(typed);
    // A key that must be there stays, so that the message speaks of the value.
    bench.edit(path, asWritten(typed, kind) ?? (required ? '' : undefined));
  };
  const leave = (): void => {
    setDraft(null);
    bench.settle();
  };
  const common = {
    id,
    value: shown,
    required,
    disabled: !tree.sound,
    'aria-invalid': found.length > 0,
    'aria-describedby': `${id}-hint${found.length > 0 ? ` ${id}-wrong` : ''}`,
    onBlur: leave,
  };
  return (
    <div class={`field ${found.length > 0 ? 'wrong' : ''}`}>
      <label for={id}>{label ?? labelOf(path.at(-1) ?? '')}</label>
      {kind.kind === 'choice' ? (
        <select {...common} onChange={(event) => take(event.currentTarget.value)}>
          {kind.words.includes(shown) || kind.words.map(String).includes(shown) ? null : (
            <option value={shown}>{shown === '' ? '–' : shown}</option>
          )}
          {shown !== '' && !required ? <option value="">–</option> : null}
          {kind.words.map((word) => (
            <option key={word} value={word}>
              {word}
            </option>
          ))}
        </select>
      ) : (
        <input
          {...common}
          type="text"
          autocomplete="off"
          spellcheck={false}
          inputMode={kind.kind === 'number' ? 'numeric' : 'text'}
          placeholder={schema.default === undefined ? '' : String(schema.default)}
          onInput={(event) => take(event.currentTarget.value)}
        />
      )}
      <span class="hint" id={`${id}-hint`}>
        {schema.description}
        {schema.default === undefined ? '' : ` Left out: ${schema.default}.`}
      </span>
      {found.length > 0 ? (
        <span class="problem" id={`${id}-wrong`}>
          {found.map((p) => `${p.found}; ${p.taken}`).join('. ')}
        </span>
      ) : null}
    </div>
  );
}
