/** A button with a list of things to do below it. Escape and a press elsewhere close it. */
import type { ComponentChildren } from 'preact';
import { useEffect, useId, useRef, useState } from 'preact/hooks';

interface MenuProps {
  readonly name: string;
  readonly children: ComponentChildren;
}

export function Menu({ name, children }: MenuProps) {
  const [open, set] = useState(false);
  const box = useRef<HTMLDivElement>(null);
  const id = useId();
  useEffect(() => {
    if (!open) return;
    const close = (event: Event): void => {
      if (
        event instanceof KeyboardEvent ? event.key === 'Escape' : !box.current?.contains(event.target as Node)
      )
        set(false);
    };
    document.addEventListener('keydown', close);
    document.addEventListener('pointerdown', close);
    return () => {
      document.removeEventListener('keydown', close);
      document.removeEventListener('pointerdown', close);
    };
  }, [open]);
  return (
    <div class="menu" ref={box}>
      <button type="button" aria-expanded={open} aria-controls={id} onClick={() => set(!open)}>
        {name}
      </button>
      {open ? (
        // biome-ignore lint/a11y/useKeyWithClickEvents: what is pressed inside closes the list, by keyboard as well
        // biome-ignore lint/a11y/noStaticElementInteractions: the buttons inside are what is pressed
        <div
          class="items"
          id={id}
          onClick={(event) => (event.target as Element).closest('button[data-closes]') && set(false)}
        >
          {children}
        </div>
      ) : null}
    </div>
  );
}
