/** Pictures are as wide as their place. */
import { useEffect, useRef, useState } from 'preact/hooks';

/** The width of an element [px], and what to put at the element. */
export function useWidth(): [number, { current: HTMLElement | null }] {
  const box = useRef<HTMLElement>(null);
  const [width, set] = useState(600);
  useEffect(() => {
    const element = box.current;
    if (element === null) return;
    const observer = new ResizeObserver(([entry]) => entry && set(Math.floor(entry.contentRect.width)));
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return [width, box];
}
