/** All that is wrong with the design, with the way to it. */
import type { Problem } from '../../design/problems.ts';
import { useBenchState } from '../state/use.ts';
import { goTo } from './TextView.tsx';

/** The field of a problem, or null when the forms do not show one. */
function fieldOf({ key }: Problem): HTMLElement | null {
  for (let at = key; at !== ''; at = at.replace(/(\.\w+|\[[^\]]*\]|^\w+)$/, '')) {
    const field = document.getElementById(`field-${at.replace(/[^\w-]/g, '_')}`);
    if (field) return field;
  }
  return null;
}

export function Problems({ showText }: { readonly showText: () => void }) {
  const { problems, file } = useBenchState();
  const go = (problem: Problem): void => {
    const field = fieldOf(problem);
    if (field === null) {
      showText();
      // The text is there after the next drawing.
      requestAnimationFrame(() => requestAnimationFrame(() => goTo(problem.line, problem.column)));
      return;
    }
    for (let at = field.closest('details'); at; at = at.parentElement?.closest('details') ?? null)
      at.open = true;
    field.focus();
    field.scrollIntoView({ block: 'center' });
  };
  return (
    <div role="status">
      {problems.length === 0 ? null : (
        <div class="problems">
          <p>
            <strong>
              {problems.length === 1 ? 'One thing is wrong' : `${problems.length} things are wrong`} with the
              design.
            </strong>{' '}
            The answer beside is that of the last text that could be read.
          </p>
          <ol>
            {problems.map((p) => (
              <li key={`${p.line}:${p.column} ${p.key} ${p.found}`}>
                <button type="button" class="link" onClick={() => go(p)}>
                  {file}:{p.line}:{p.column} {p.key}
                </button>
                : {p.found}; {p.taken}
              </li>
            ))}
          </ol>
        </div>
      )}
    </div>
  );
}
