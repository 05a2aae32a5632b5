/** Long work under way, with a way to stop it; or why there is nothing of it. */
import type { Slow } from '../state/use.ts';

interface ProgressProps {
  readonly of: Slow<unknown>;
  readonly what: string;
  readonly stop: () => void;
}

export function Progress({ of, what, stop }: ProgressProps) {
  switch (of.is) {
    case 'waiting':
      return (
        <p class="quiet progress">
          {what} … <progress aria-label={what} />{' '}
          <button type="button" class="small" onClick={stop}>
            Stop
          </button>
        </p>
      );
    case 'stopped':
      return <p class="quiet">Stopped. The next change starts it again.</p>;
    case 'failed':
      return <p class="problem">This could not be worked out: {of.why}</p>;
    default:
      return null;
  }
}
