/** Puts values into the words: the words are escaped, the values are markup. */
import { escaped } from '../pictures/elements.ts';
import { fact } from './facts.ts';
import type { Job } from './job.ts';
import type { Condition, Line } from './words.ts';

const PLACEHOLDER = /\{([^{}]*)\}/;

/** Names of the placeholders in a text, in their order. */
export const placeholders = (text: string): string[] =>
  [...text.matchAll(new RegExp(PLACEHOLDER, 'g'))].map(([, key]) => key as string);

/** The words without the placeholders. */
export const wordsOnly = (text: string): string => text.replace(new RegExp(PLACEHOLDER, 'g'), '');

/** One text, filled. */
export const fill = (text: string, job: Job): string =>
  text
    .split(new RegExp(PLACEHOLDER))
    .map((part, i) => (i % 2 === 0 ? escaped(part) : fact(part, job)))
    .join('');

/** Whether a line is printed for this design. */
function holds(condition: Condition, { result }: Job): boolean {
  const { runs, kit } = result.evaluation.design;
  const relays = runs.flatMap((run) => (run.relay ? [run.relay] : []));
  switch (condition) {
    case 'relay':
      return relays.length > 0;
    case 'no_relay':
      return relays.length === 0;
    case 'fuse':
      return runs.some((run) => run.fuse);
    case 'no_fuse':
      return runs.every((run) => !run.fuse);
    case 'return':
      return runs.some((run) => run.side === 'return');
    case 'no_return':
      return runs.every((run) => run.side === 'feed');
    case 'loose':
    case 'crimped':
    case 'assembled':
      return kit.delivered === condition;
    case 'not_loose':
      return kit.delivered !== 'loose';
    case 'not_assembled':
      return kit.delivered !== 'assembled';
    case 'diode':
      return relays.some((relay) => relay.suppression === 'diode' || relay.suppression === 'diode_zener');
  }
}

/** The lines that this design calls for, filled. */
export const filled = (lines: readonly Line[], job: Job): string[] =>
  lines.filter(({ when }) => when === undefined || holds(when, job)).map(({ text }) => fill(text, job));
