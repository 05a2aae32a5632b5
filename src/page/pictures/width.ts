/** Pictures are as wide as their place; on paper as wide as a page. */
import { options } from 'preact';
import { useLayoutEffect, useRef, useState } from 'preact/hooks';

/** Between the margins of A4, and of Letter [px]: 184 mm. */
const PAPER = 695;

/** Whether the page is being printed. Who draws is told, and draws at once: the print does not wait. */
const tellers = new Set<(paper: boolean) => void>();

/** `first` is called before anything is drawn for paper. */
export function followPrinting(first: () => void): void {
  const later = options.debounceRendering;
  const tell = (paper: boolean): void => {
    options.debounceRendering = (draw) => draw();
    if (paper) first();
    for (const teller of tellers) teller(paper);
    if (later === undefined) delete options.debounceRendering;
    else options.debounceRendering = later;
  };
  addEventListener('beforeprint', () => tell(true));
  addEventListener('afterprint', () => tell(false));
}

/** The width of an element [px], 0 until it is shown, what to put at the element, and whether it is for paper. */
export function useWidth(): [number, { current: HTMLElement | null }, boolean] {
  const box = useRef<HTMLElement>(null);
  const [width, set] = useState(0);
  const [paper, print] = useState(false);
  // Before it is painted, and nothing is drawn until then: else a phone would show a wider page first.
  useLayoutEffect(() => {
    const element = box.current;
    if (element === null) return;
    // What is not shown has no width, and keeps that which it had.
    const take = (now: number): void => {
      if (now >= 1) set(Math.floor(now));
    };
    const observer = new ResizeObserver(([entry]) => take(entry?.contentRect.width ?? 0));
    take(element.clientWidth);
    observer.observe(element);
    tellers.add(print);
    return () => {
      observer.disconnect();
      tellers.delete(print);
    };
  }, []);
  return [paper ? PAPER : width, box, paper];
}
