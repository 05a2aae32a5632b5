/** The tree of a number as nested lists: formulas with what goes into them, each with its value and where it is from. */
import { alike, inOrder, known, of, short, throughOf } from '../../explain/outline.ts';
import type { Part, Told } from '../../explain/tree.ts';
import type { Figure } from '../protocol.ts';

interface TreeProps {
  readonly told: Told;
  /** Shows the tree of another number. */
  readonly further: (figure: Figure) => void;
}

/** A formula is told once; where it comes again, a link leads to it. */
const placeOf = ({ id, at }: Told): string => `told ${id} ${JSON.stringify(at)}`;

function jump(told: Told): void {
  const found = document.getElementById(placeOf(told));
  found?.scrollIntoView({ block: 'center' });
  found?.focus();
}

/** Of a number its formula, what goes into it, and the branches behind that. */
export function Tree({ told, further }: TreeProps) {
  const { lines, ends } = throughOf(told);
  return (
    <>
      {lines.map((line) => (
        <p key={line.text} id={placeOf(line.told)} tabIndex={-1} class="formula">
          <code>= {line.text}</code>
        </p>
      ))}
      {told.note === '' ? null : <p>{told.note}</p>}
      {ends.parts.length === 0 ? null : (
        <ul class="tree">
          {inOrder(ends.parts).map((part, i) => (
            <Of key={`${part.id} ${part.role} ${i}`} part={part} further={further} />
          ))}
        </ul>
      )}
    </>
  );
}

const WORDS = { enters: '', decides: 'decides: ', picks: 'picks: ' } as const;

/** What goes in of one quantity; of many values that are much alike only how many and between what. */
function Of({ part, further }: { readonly part: Part } & Pick<TreeProps, 'further'>) {
  const { id, role, count, span, told } = part;
  const each = alike(part);
  return (
    <>
      {each || told.length < count ? (
        <li>
          {WORDS[role]}
          {count} × <code>{id}</code>
          {each ? `, each ${told[0]?.text}` : span === '' ? '' : `: ${span}`}
        </li>
      ) : null}
      {each ? null : told.map((one) => <One key={placeOf(one)} told={one} role={role} further={further} />)}
    </>
  );
}

function One({ told, role, further }: TreeProps & Pick<Part, 'role'>) {
  const { id, at, label, text, cut } = told;
  return (
    <li>
      <p>
        {WORDS[role]}
        {label}
        {of(told)}: <strong>{known(text)}</strong>{' '}
        <Source told={cut === null ? told : { ...told, source: '' }} />{' '}
        {cut === null ? null : (
          <button
            type="button"
            class="link"
            onClick={() => (cut === 'deeper' ? further({ quantity: id, at }) : jump(told))}
          >
            {cut === 'deeper' ? 'where from' : 'told above'}
            <span class="of"> {label}</span>
          </button>
        )}
      </p>
      {role === 'enters' && !short(told) ? <Tree told={{ ...told, note: '' }} further={further} /> : null}
    </li>
  );
}

/** Symbol and name in formulas, and what the value rests on. */
export const Source = ({ told: { id, symbol, source } }: Pick<TreeProps, 'told'>) => (
  <span class="quiet">
    {symbol} <code>{id}</code>
    {source === '' ? null : `, ${source}`}
  </span>
);
