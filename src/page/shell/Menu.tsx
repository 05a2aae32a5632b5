/** A button with a list of things to do below it. Escape, a press elsewhere and going on by Tab close it. */
import type { ComponentChildren } from 'preact';
import { useEffect, useId, useRef, useState } from 'preact/hooks';

interface MenuProps {
  readonly name: string;
  readonly children: ComponentChildren;
}

export function Menu({ name, children }: MenuProps) {
  const [open, set] = useState(false);
  const box = useRef<HTMLDivElement>(null);
  const button = useRef<HTMLButtonElement>(null);
  const id = useId();
  useEffect(() => {
    if (!open) return;
    const outside = ({ target }: Event): void => {
      if (!box.current?.contains(target as Node)) set(false);
    };
    const byKey = ({ key }: KeyboardEvent): void => {
      if (key !== 'Escape') return;
      button.current?.focus();
      set(false);
    };
    document.addEventListener('keydown', byKey);
    document.addEventListener('pointerdown', outside);
    document.addEventListener('focusin', outside);
    return () => {
      document.removeEventListener('keydown', byKey);
      document.removeEventListener('pointerdown', outside);
      document.removeEventListener('focusin', outside);
    };
  }, [open]);
  return (
    <div class="menu" ref={box}>
      <button ref={button} type="button" aria-expanded={open} aria-controls={id} onClick={() => set(!open)}>
        {name}
      </button>
      {open ? (
        // biome-ignore lint/a11y/useKeyWithClickEvents: what is pressed inside closes the list, by keyboard as well
        // biome-ignore lint/a11y/noStaticElementInteractions: the buttons inside are what is pressed
        <div
          class="items"
          id={id}
          // What is pressed is gone then: the next Tab goes on from the button.
          onClickCapture={(event) =>
            (event.target as Element).closest('button[data-closes]') && button.current?.focus()
          }
          onClick={(event) => (event.target as Element).closest('button[data-closes]') && set(false)}
        >
          {children}
        </div>
      ) : null}
    </div>
  );
}
