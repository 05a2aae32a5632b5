/** Long work under way, with a way to stop it; or why there is nothing of it, with a way to start it again. */
import type { Slow } from '../state/use.ts';

interface ProgressProps {
  readonly of: Slow<unknown>;
  readonly what: string;
  readonly stop: () => void;
}

export function Progress({ of, what, stop }: ProgressProps) {
  if (of.is === 'done') return null;
  const waits = of.is === 'waiting';
  return (
    <p class={of.is === 'failed' ? 'problem' : 'quiet progress'}>
      {waits ? `${what} … ` : null}
      {waits ? <progress aria-label={what} /> : null}
      <span role="status">
        {of.is === 'stopped' ? 'Stopped: nothing was made. ' : null}
        {of.is === 'failed' ? `This could not be worked out: ${of.why}. ` : null}
      </span>{' '}
      <button type="button" class="small" onClick={waits ? stop : of.again}>
        {waits ? 'Stop' : 'Start again'}
      </button>
    </p>
  );
}
