/** The design as its text. */
import { useBench, useBenchState } from '../state/use.ts';

/** Id of the text, for the way from a problem to its line. */
export const TEXT = 'design-text';

export function TextView() {
  const bench = useBench();
  const { history, problems } = useBenchState('history', 'problems');
  return (
    <>
      <label for={TEXT}>The design as YAML or JSON</label>
      <textarea
        id={TEXT}
        class="text"
        spellcheck={false}
        autocomplete="off"
        rows={40}
        // As the browser ends lines: it would move the cursor for others.
        value={history.now.text.replace(/\r\n?/g, '\n')}
        aria-invalid={problems.length > 0}
        onInput={(event) => bench.write(event.currentTarget.value)}
        onBlur={() => bench.settle()}
      />
    </>
  );
}

/** Puts the cursor of the text to a line and a column, both from 1. */
export function goTo(line: number, column: number): void {
  const area = document.getElementById(TEXT);
  if (!(area instanceof HTMLTextAreaElement)) return;
  const before = area.value.split('\n').slice(0, line - 1);
  const at = before.reduce((sum, one) => sum + one.length + 1, 0) + column - 1;
  area.focus();
  area.setSelectionRange(at, at);
  // A textarea does not scroll to its cursor by itself in every browser.
  area.scrollTop = Math.max(0, (line - 5) * (area.scrollHeight / area.value.split('\n').length));
}
