/** A picture that is of an earlier answer until it is drawn anew: greyed where that takes longer, and left out of a print. */
import type { ComponentChildren } from 'preact';

interface DatedProps {
  readonly late: boolean;
  readonly children: ComponentChildren;
}

export const Dated = ({ late, children }: DatedProps) => (
  <div class={late ? 'dated' : ''}>
    {children}
    {late ? (
      <p class="leftout">
        Left out: this picture was not yet drawn for the design as it stands. Print again.
      </p>
    ) : null}
  </div>
);
