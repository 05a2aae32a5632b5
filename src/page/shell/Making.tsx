/** Files that take their time to be made: what is going on, said politely, and a way to stop it. */
import { useState } from 'preact/hooks';
import type { Calls, Tell } from '../protocol.ts';
import { askOnce, type Job, Stopped } from '../state/client.ts';
import { save } from './files.ts';

interface Made {
  /** Asks for the file and hands it to the downloads under this name. */
  readonly make: <K extends 'workbook' | 'kitbook'>(kind: K, ask: Calls[K]['ask'], name: string) => void;
  /** Null where nothing is being made. */
  readonly stop: (() => void) | null;
}

/** `what` is the file as a sentence starts with it: `The workbook`. */
export function useMaking(what: string, say: Tell): Made {
  const [job, start] = useState<Job<unknown> | null>(null);
  const make: Made['make'] = async (kind, ask, name) => {
    say(`${what} is being made …`);
    const made = askOnce(kind, ask, (stage) => say(`${what}: ${stage} …`));
    start(made);
    const words = await made.reply.then(
      (bytes) => {
        save(bytes, name);
        return `${what} is in the downloads.`;
      },
      (error) =>
        error instanceof Stopped
          ? `Stopped: ${what.toLowerCase()} was not made.`
          : `${what} could not be made: ${error instanceof Error ? error.message : String(error)}`,
    );
    // The button that stops goes: whoever is on it goes on from what is said.
    const place = document.activeElement?.closest('.making')?.querySelector<HTMLElement>('[role=status]');
    start(null);
    say(words);
    place?.focus();
  };
  return { make, stop: job?.stop ?? null };
}

interface MakingProps {
  readonly what: string;
  readonly said: string;
  readonly stop: (() => void) | null;
}

export const Making = ({ what, said, stop }: MakingProps) => (
  <span class="making">
    <span class="said" role="status" tabIndex={-1}>
      {said}
    </span>{' '}
    {stop === null ? null : (
      <>
        <progress aria-label={`${what} is being made`} />{' '}
        <button type="button" class="small" onClick={stop}>
          Stop<span class="of"> {what.toLowerCase()}</span>
        </button>
      </>
    )}
  </span>
);
