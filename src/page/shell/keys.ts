/** Undo and redo by keyboard, and the room that a keyboard on the screen takes. */
import { useEffect } from 'preact/hooks';
import type { Bench } from '../state/bench.ts';

/** The mark of a field in which something was typed since it was entered. */
const TYPED = 'typed';

/** In a field that is being typed in, the browser's own undo takes back what was typed. */
export function useKeys(bench: Bench): void {
  useEffect(() => {
    const keys = (event: KeyboardEvent): void => {
      if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
      const { target } = event;
      if (target instanceof HTMLElement && TYPED in target.dataset) return;
      const key = event.key.toLowerCase();
      if (key === 'z' && !event.shiftKey) bench.undo();
      else if (key === 'y' || (key === 'z' && event.shiftKey)) bench.redo();
      else return;
      event.preventDefault();
    };
    document.addEventListener('keydown', keys);
    return () => document.removeEventListener('keydown', keys);
  }, [bench]);
}

/** The field at hand stays in sight when the keyboard of a phone takes its part of the screen. */
export function useSight(): void {
  useEffect(() => {
    const show = (): void => {
      const { activeElement: hand } = document;
      if (hand?.matches('input[type="text"]')) hand.scrollIntoView({ block: 'nearest' });
    };
    addEventListener('resize', show);
    return () => removeEventListener('resize', show);
  }, []);
}
