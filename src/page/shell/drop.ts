/** A file that is dropped anywhere on the page is opened. */
import { useEffect, useState } from 'preact/hooks';
import type { Bench } from '../state/bench.ts';
import { take } from './files.ts';

/** Whether a file is held over the page. */
export function useDrop(bench: Bench, say: (words: string) => void): boolean {
  const [over, set] = useState(false);
  useEffect(() => {
    const holds = ({ dataTransfer }: DragEvent): boolean => dataTransfer?.types.includes('Files') ?? false;
    const drag = (event: DragEvent): void => {
      if (!holds(event)) return;
      event.preventDefault();
      set(true);
    };
    const leave = ({ relatedTarget }: DragEvent): void => {
      if (relatedTarget === null) set(false);
    };
    const drop = (event: DragEvent): void => {
      if (!holds(event)) return;
      event.preventDefault();
      set(false);
      take(bench, [...(event.dataTransfer?.files ?? [])], say);
    };
    addEventListener('dragover', drag);
    addEventListener('dragleave', leave);
    addEventListener('drop', drop);
    return () => {
      removeEventListener('dragover', drag);
      removeEventListener('dragleave', leave);
      removeEventListener('drop', drop);
    };
  }, [bench, say]);
  return over;
}
