/** A number that says where it comes from when it is pressed. */
import type { ComponentChildren } from 'preact';
import { useContext } from 'preact/hooks';
import type { Figure } from '../protocol.ts';
import { OriginContext } from '../state/use.ts';

interface OriginProps {
  readonly of: Figure;
  /** What it is and its value, for those who do not see the heading. */
  readonly label: string;
  /** Reached by the arrow keys from the first of its row, so that a table does not fill the order of Tab. */
  readonly inner?: boolean;
  readonly children: ComponentChildren;
}

export function Origin({ of, label, inner = false, children }: OriginProps) {
  const show = useContext(OriginContext);
  return (
    <button
      type="button"
      class="origin"
      aria-haspopup="dialog"
      aria-label={label}
      title="Where it comes from"
      tabIndex={inner ? -1 : 0}
      onClick={() => show(of)}
    >
      {children}
    </button>
  );
}

const ROW = 'tr, li';
const STEPS: Readonly<Record<string, readonly [down: number, right: number]>> = {
  ArrowLeft: [0, -1],
  ArrowRight: [0, 1],
  ArrowUp: [-1, 0],
  ArrowDown: [1, 0],
};

/** Arrow keys go from number to number: along a row or a finding, and up and down. */
export function byArrows(event: KeyboardEvent & { readonly currentTarget: HTMLElement }): void {
  const [down, right] = STEPS[event.key] ?? [0, 0];
  const from = event.target;
  if (!(from instanceof HTMLElement) || !from.matches('.origin') || (down === 0 && right === 0)) return;
  const rows = [...event.currentTarget.querySelectorAll(ROW)];
  const numbers = (row: Element): HTMLElement[] => [...row.querySelectorAll<HTMLElement>('.origin')];
  const row = from.closest(ROW) ?? event.currentTarget;
  const [place, column] = [rows.indexOf(row), numbers(row).indexOf(from)];
  const next = down === 0 ? row : rows[place + down];
  const found = next === undefined ? undefined : numbers(next)[column + right];
  if (found === undefined) return;
  event.preventDefault();
  found.focus();
}
