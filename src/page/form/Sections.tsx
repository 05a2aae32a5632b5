/** The design as forms, one section for each part of the file. */
import { useContext, useEffect, useState } from 'preact/hooks';
import type { Plain } from '../../saved/document.ts';
import { idOf, labelOf, problemsAt, valueAt } from '../place.ts';
import { GoContext, useBench, useBenchState } from '../state/use.ts';
import { Field } from './Field.tsx';
import { Group } from './Group.tsx';
import { List } from './List.tsx';
import { fieldsOf, kindOf, type Named } from './schema.ts';
import { startOf } from './start.ts';

/** The version is written in the text only. */
const TEXT_ONLY = ['coilfeed'];
/** Open when the page opens: what a person changes most. */
const OPEN = ['coil', 'feed'];
const TITLES: Readonly<Record<string, string>> = {
  shop: 'The shop’s own file',
  points: 'Operating points',
  sweep: 'Engine speeds of the charts',
  sizes: 'Sizes to choose from',
  original: 'The feed that this one replaces',
  kit: 'Papers of the kit',
  measured: 'Readings taken',
  instruments: 'Errors of the instruments',
  tolerance: 'Tolerances',
  own: 'Values and rules of your own',
  added: 'Sheets added to the workbook',
  remarks: 'Notes beside the inputs',
};

/** What adds a part whose key is no name of it. */
const ADD: Readonly<Record<string, string>> = {
  original: 'add it, as a copy of this feed',
  added: 'add sheets',
  remarks: 'add notes',
};

export function Sections() {
  const { form, tree } = useBenchState('form', 'tree');
  if (form === null) return <p class="quiet">The forms are being made …</p>;
  const fields = fieldsOf(form.schema).filter(({ key }) => !TEXT_ONLY.includes(key));
  const lines = fields.filter(({ schema }) => ['text', 'choice'].includes(kindOf(schema).kind));
  return (
    <>
      {tree.sound ? null : (
        <p class="problem">
          The text cannot be read as it is, so the forms wait: correct it in the text view.
        </p>
      )}
      <div class="fields wide">
        {lines.map(({ key, schema, required }) => (
          <Field key={key} path={[key]} schema={schema} required={required} />
        ))}
      </div>
      {fields
        .filter((field) => !lines.includes(field))
        .map((field) => (
          <Section key={field.key} field={field} />
        ))}
    </>
  );
}

/** At the start each section is drawn in a task of its own: all together would hold up what a person does meanwhile. */
let started = false;

function Section({ field: { key, schema, required } }: { readonly field: Named }) {
  const bench = useBench();
  const go = useContext(GoContext);
  const { tree, problems } = useBenchState('tree', 'problems');
  /** The button that is pressed goes with it. */
  const put = (value: Plain | undefined): void => {
    bench.edit([key], value);
    go({ key });
  };
  const wrong = problemsAt(problems, [key], true).length;
  const there = required || tree.has([key]);
  const name = TITLES[key] ?? labelOf(key);
  const list = kindOf(schema).kind === 'list';
  const [drawn, draw] = useState(started);
  useEffect(() => {
    if (drawn) return;
    const clock = setTimeout(() => {
      started = true;
      draw(true);
    });
    return () => clearTimeout(clock);
  }, []);
  return (
    <details class={drawn ? 'section' : 'section coming'} open={OPEN.includes(key)} id={idOf([key])}>
      <summary>
        <h3>{name}</h3>
        {wrong > 0 ? <span class="count">{wrong} to mend</span> : null}
        {there ? null : <span class="quiet whole">not given</span>}
      </summary>
      <p class="about">{schema.description}</p>
      {!drawn ? null : list ? (
        <List path={[key]} schema={schema} member={Group} />
      ) : there ? (
        <>
          <Group path={[key]} schema={schema} />
          {required ? null : (
            <button type="button" class="small" disabled={!tree.sound} onClick={() => put(undefined)}>
              remove {labelOf(key)}
            </button>
          )}
        </>
      ) : (
        <button
          type="button"
          class="small"
          disabled={!tree.sound}
          onClick={() => put(key === 'original' ? feedOf(tree.value) : startOf([key], 0))}
        >
          {ADD[key] ?? `add ${labelOf(key)}`}
        </button>
      )}
    </details>
  );
}

/** The runs of the design, to be changed into those of the feed before it. */
function feedOf(root: unknown) {
  const runs = { feed: valueAt(root, ['feed']), return: valueAt(root, ['return']) };
  return JSON.parse(JSON.stringify(runs));
}
