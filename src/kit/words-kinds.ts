/** What the words of the instructions are made of. */

/** When a line is printed; always when it has no condition. */
export const CONDITIONS = [
  'relay',
  'no_relay',
  'fuse',
  'no_fuse',
  'return',
  'no_return',
  'diode',
  'loose',
  'crimped',
  'assembled',
  'not_loose',
  'not_assembled',
] as const;
export type Condition = (typeof CONDITIONS)[number];

export interface Line {
  readonly text: string;
  readonly when?: Condition;
}

export interface Fault {
  readonly sign: string;
  readonly cause: string;
  readonly act: string;
}

/** Parts that are lists of lines, in the order of the paper. */
export const LISTS = [
  'about',
  'cautions',
  'tools',
  'prepare',
  'mount',
  'route',
  'crimp',
  'ground',
  'trigger',
  'connect',
  'measure',
  'power',
  'first_start',
  'ratings',
  'card',
  'stop',
  'back',
] as const;
export type ListName = (typeof LISTS)[number];

/** These are added to ours and never replace them: nobody's kit goes out with fewer cautions. */
export const ADDED: readonly ListName[] = ['cautions', 'card', 'stop'];

export interface Words extends Readonly<Record<ListName, readonly Line[]>> {
  readonly faults: readonly Fault[];
}

export const always = (...texts: string[]): Line[] => texts.map((text) => ({ text }));
export const only = (when: Condition, ...texts: string[]): Line[] => texts.map((text) => ({ text, when }));
