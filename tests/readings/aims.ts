/** What the diagnosis makes of random installs with real instruments: counted, and the part of docs/accuracy.md that tells it. */
import { readDesign } from '../../src/design/read.ts';
import { grid } from '../../src/docs/markdown.ts';
import { checked } from '../../src/readings/check.ts';
import { atPosts } from '../../src/readings/expected.ts';
import { run } from '../../src/run.ts';
import { namesOf } from './named.ts';
import { type Install, install, type Kind } from './truth/install.ts';
import { readingsOf, weight } from './truth/readings.ts';

export type Care = 'thorough' | 'sparse';

/** What one check came to. */
export interface Outcome {
  readonly seed: number;
  readonly kind: Kind;
  /** In the words of `namesOf`; empty when nothing is wrong. */
  readonly truth: string;
  /** A resistance of 1 W or 100 mV, what anybody would want to be told of. */
  readonly heavy: boolean;
  readonly found: readonly (readonly string[])[];
  /** The readings make the install fail. */
  readonly fails: boolean;
}

/** Installs of each kind in every three hundred. */
const COUNTS: Readonly<Record<Kind, number>> = {
  none: 80,
  resistance: 80,
  size: 30,
  coil: 50,
  dwell: 25,
  battery: 25,
  source: 5,
  clamp: 5,
};

function truthOf({ fault }: Install): string {
  switch (fault.kind) {
    case 'none':
      return '';
    case 'resistance':
    case 'size':
      return fault.wire;
    case 'coil':
      return `coil ${fault.coil}`;
    case 'battery':
      return 'supply';
    default:
      return fault.kind;
  }
}

export function outcomesOf(set: Care, share: number, only?: readonly Kind[]): Outcome[] {
  return (Object.entries(COUNTS) as [Kind, number][])
    .filter(([kind]) => only?.includes(kind) ?? true)
    .flatMap(([kind, count]) =>
      Array.from({ length: Math.ceil(count * share) }, (_, i) =>
        outcome(1000 * (1 + i) + kind.length * 7, kind, set),
      ),
    );
}

function outcome(seed: number, kind: Kind, set: Care): Outcome {
  const one = install(seed, kind);
  const text = JSON.stringify({ ...one.document, measured: readingsOf(one, set) });
  const read = readDesign(text, 'install.json');
  if (!read.ok) throw new Error(`install ${seed}: ${JSON.stringify(read.problems)}`);
  const { diagnosis, readings, result } = checked(run(read.design));
  const { fault } = one;
  const heft =
    fault.kind === 'resistance' || fault.kind === 'size' ? weight(one, fault.wire, fault.ohm) : null;
  return {
    seed,
    kind,
    truth: truthOf(one),
    heavy: heft !== null && (heft.watts >= 1 || heft.volts >= 0.1),
    found: namesOf(result.evaluation, diagnosis),
    fails:
      diagnosis.found.length > 0 ||
      !diagnosis.explained ||
      readings.some(({ reading, stands }) => (stands === 'low' || stands === 'high') && !atPosts(reading)),
  };
}

export const named = ({ found, truth }: Outcome): boolean =>
  found.some((set) => set.length === 1 && set[0] === truth);
export const amongTwo = (one: Outcome): boolean =>
  named(one) || one.found.some((set) => set.length === 2 && set.includes(one.truth));
export const among = (one: Outcome): boolean => one.found.some((set) => set.includes(one.truth));
/** A part of the install that is good is named; that a reading is doubted is no blame. */
export const blamed = ({ found, truth }: Outcome): boolean =>
  found.some(
    ([first = '', ...others]) =>
      others.length === 0 && first !== truth && !/^(reading|meter|clamp|scope)/.test(first),
  );

const shareOf = (all: readonly Outcome[], which: (one: Outcome) => boolean): number =>
  all.length === 0 ? 0 : all.filter(which).length / all.length;

export interface Aim {
  readonly what: string;
  readonly count: number;
  readonly share: number;
  /** At most, where it is negative; at least, where positive. */
  readonly aim: number | null;
}

export function aimsOf(all: readonly Outcome[], set: Care): Aim[] {
  const of = (...kinds: Kind[]): Outcome[] => all.filter(({ kind }) => kinds.includes(kind));
  const heavy = all.filter((one) => one.heavy);
  const row = (
    what: string,
    some: readonly Outcome[],
    which: (one: Outcome) => boolean,
    aim: number | null,
  ): Aim => ({
    what,
    count: some.length,
    share: shareOf(some, which),
    aim,
  });
  const only = (aim: number): number | null => (set === 'thorough' ? aim : null);
  return [
    row('healthy installs that fail because of readings', of('none'), ({ fails }) => fails, -0.02),
    row('installs in which a good part is blamed', all, blamed, -0.01),
    row('coils with R or L × 0.6 to 2.2, shorted turns or open: named', of('coil'), named, only(0.9)),
    row('a resistance of 1 W or 100 mV: named, or among two', heavy, amongTwo, only(0.95)),
    row('a resistance of 1 W or 100 mV: named, or among those that cannot be told apart', heavy, among, null),
    row('low battery: named', of('battery'), named, only(0.95)),
    row('wrong dwell: named', of('dwell'), named, only(0.95)),
  ];
}

export const meets = ({ share, aim }: Aim): boolean =>
  aim === null || (aim < 0 ? share <= -aim : share >= aim);

const percent = (share: number): string => `${(100 * share).toFixed(1)} %`;

export const HEAD = '## Diagnosis of readings';

export function aimsSection(aims: Readonly<Record<Care, readonly Aim[]>>, seconds: string): string {
  const table = (set: Care): string =>
    grid(
      ['what', 'installs', 'share', 'aim'],
      aims[set].map(({ what, count, share, aim }) => [
        what,
        String(count),
        percent(share),
        aim === null ? '–' : aim < 0 ? `at most ${percent(-aim)}` : `at least ${percent(aim)}`,
      ]),
    );
  return `${HEAD}

Random installs, 300 of them, whose currents a plain integration in time of its own computes (no part of the model; a sample
is held against ngspice). Every part is anywhere within its tolerance, every conductor at its own temperature, the supply
within 1 %. The multimeter errs by up to 0.5 % and 2 digits, the clamp by up to 3 %, the ohmmeter by 1 %. Each install is
healthy or has one fault, and goes through \`coilfeed check\` twice: with thorough readings (posts, the drop of every conductor
at two points, currents of all coils, supplies and resistances of all coils) and with three to nine hurried ones. A coil's
resistance counts as seen by an ohmmeter in the thorough set only. This part is written by \`npx vitest run
tests/readings/aims.test.ts -u\`, which fails when an aim is missed.

Thorough readings:

${table('thorough')}

Sparse readings; what they cannot show is no miss, and what they cannot tell apart is listed as such:

${table('sparse')}

${seconds}
`;
}
