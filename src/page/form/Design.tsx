/** The design as forms or as text, and below it the place where help and faults are told. */
import { useContext, useEffect, useState } from 'preact/hooks';
import { idOf, pathOf, problemsAt, valueAt } from '../place.ts';
import { GoContext, type To, useBenchState } from '../state/use.ts';
import { infoAt, inOther } from './info.ts';
import { Sections } from './Sections.tsx';
import { goTo, TextView } from './TextView.tsx';
import { type Told, TrayContext } from './tray.ts';

export function Design({ to }: { readonly to: To | null }) {
  const [text, setText] = useState(false);
  const [told, tell] = useState<Told | null>(null);
  useEffect(() => {
    if (to === null) return;
    // The forms are there after the next drawing.
    setText(false);
    afterDrawing(() => {
      if (show(to)) return;
      setText(true);
      afterDrawing(() => goTo(to.line ?? 1, to.column ?? 1));
    });
  }, [to]);
  return (
    <section class="design" aria-labelledby="design">
      <div class="headline">
        <h2 id="design">Design</h2>
        <fieldset class="switch" aria-label="How the design is shown">
          <button type="button" aria-pressed={!text} onClick={() => setText(false)}>
            Forms
          </button>
          <button type="button" aria-pressed={text} onClick={() => setText(true)}>
            Text
          </button>
        </fieldset>
      </div>
      <div class="sheet">
        <TrayContext.Provider value={tell}>{text ? <TextView /> : <Sections />}</TrayContext.Provider>
      </div>
      <Tray told={text ? null : told} />
    </section>
  );
}

const afterDrawing = (act: () => void): void => {
  requestAnimationFrame(() => requestAnimationFrame(act));
};

/** Opens and shows the field of a key, or the part around it; false where the forms do not show it. */
function show({ key, act }: To): boolean {
  for (let at = pathOf(key); at.length > 0; at = at.slice(0, -1)) {
    const found = document.getElementById(idOf(at));
    if (found === null) continue;
    for (let fold = found.closest('details'); fold; fold = fold.parentElement?.closest('details') ?? null)
      fold.open = true;
    const target = targetIn(found, act);
    target.focus({ preventScroll: true });
    // As after Tab: what is typed takes the place of what stands there.
    if (target instanceof HTMLInputElement) target.select();
    target.scrollIntoView({ block: 'center' });
    return true;
  }
  return false;
}

/** Of a part what is gone on with: the button that moved it, what folds it, or the first of its fields. */
function targetIn(part: HTMLElement, act?: string): HTMLElement {
  // Parts within have buttons of their own, which stand before.
  const buttons = act === undefined ? [] : [...part.querySelectorAll<HTMLElement>(`[data-act="${act}"]`)];
  const first = part instanceof HTMLDetailsElement ? 'summary' : 'input, select, button, summary';
  const inside = part.matches('details, fieldset, .list')
    ? part.querySelector<HTMLElement>(first)
    : undefined;
  return buttons.at(-1) ?? inside ?? part;
}

/** Help of the field at hand, and what is wrong with it; else how much is wrong in all. It keeps its height. */
function Tray({ told }: { readonly told: Told | null }) {
  const go = useContext(GoContext);
  const { problems, tree, form } = useBenchState('problems', 'tree', 'form');
  const own = told === null ? [] : problemsAt(problems, told.path, true);
  const other = problems.filter((problem) => !own.includes(problem));
  const value = told === null ? undefined : valueAt(tree.value, told.path);
  const also = told !== null && typeof value === 'string' ? inOther(value, infoAt(form, told.path)) : '';
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard
    <section class="tray" tabIndex={0} aria-label="Help and faults">
      <div id="tray">
        {own.map((p) => (
          <p key={p.found} class="problem" id={`${idOf(told?.path ?? [])}-told`}>
            {p.found}; {p.taken}
          </p>
        ))}
        {told === null ? (
          <p class="quiet">
            Numbers take the unit beside their field; any other can be written with them: 55 in, 1.4 m, 140
            degF.
          </p>
        ) : (
          <p>
            <strong>{told.name}</strong> {also} <span class="quiet">{told.text}</span>
          </p>
        )}
      </div>
      {other.length > 0 ? (
        <p>
          <button type="button" class="link problem" onClick={() => other[0] && go(other[0])}>
            {other.length === 1 ? '1 thing to mend' : `${other.length} things to mend`}:{' '}
            {other[0]?.key || `line ${other[0]?.line}`}
          </button>
        </p>
      ) : null}
    </section>
  );
}
