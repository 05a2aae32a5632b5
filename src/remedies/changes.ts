/** Changes that could mend what fails: those of the trade, each to be tried by evaluating the whole design with it. */
import { printSize } from '../basis/print.ts';
import { FUSE_RATINGS } from '../data/fuse-ratings.ts';
import { RELAY_CLASSES } from '../data/relays.ts';
import type { Design, Fuse, FuseType, Relay, Run, Series } from '../design/design.ts';
import { SIZES } from '../design/names.ts';
import type { Result } from '../findings/result.ts';
import type { QuantityName } from '../model/model.ts';
import { isShelved } from '../model/tables.ts';
import { printQuantity, say } from '../views/print.ts';
import type { Change } from './remedy.ts';
import { fusesOf, isTaken, relaysOf, toOrder, typesOf } from './shelf.ts';

const withRun = (design: Design, index: number, part: Partial<Run>): Design => ({
  ...design,
  runs: design.runs.map((run, i) => (i === index ? { ...run, ...part } : run)),
});

const wiresOf = ({ wires }: Design, run: number): number => wires.filter((wire) => wire.run === run).length;
const nameOf = ({ runs }: Design, run: number): string => runs[run]?.name ?? '';
const sizeIn = ({ evaluation: e }: Result, run: number): string =>
  printSize(String(e.value('gauge', { run })));

/** The runs themselves are named by what is wrong with them, by index. */
export function changesFor(result: Result, runs: readonly number[]): Change[] {
  const { design } = result.evaluation;
  const fuses = [...design.runs.keys()].filter((run) => design.runs[run]?.fuse);
  const relays = [...design.runs.keys()].filter((run) => design.runs[run]?.relay);
  return [
    ...otherUnits(result),
    ...fuses.flatMap((run) => nearerFuse(result, run)),
    ...fuses.flatMap((run) => otherFuses(design, run)),
    ...relays.flatMap((run) => otherRelays(design, run, result)),
    ...addedFuses(design, runs),
    ...sizes(result, runs),
    ...[...design.runs.keys()].flatMap((run) => [...fewerJoints(design, run), ...shorter(design, run)]),
  ];
}

/** Inputs whose unit would explain an energy that no ignition has, each with the other unit. */
function otherUnits({ evaluation: e, findings }: Result): Change[] {
  const { coil, ignition } = e.design;
  const { resistance, inductance } = coil;
  const odd = findings.filter(({ rule, verdict }) => rule === 'energy' && verdict === 'fail');
  const change = (flag: QuantityName, key: string, times: string, changed: Partial<Design>): Change[] =>
    odd.some(({ at }) => e.value(flag, at) === 1)
      ? [
          {
            kind: 'unit',
            design: { ...e.design, ...changed },
            says: () => `\`${key}\` ${times}, if its unit is wrong`,
            effort: 0,
            parts: [],
          },
        ]
      : [];
  const withCoil = (part: Partial<Design['coil']>): Partial<Design> => ({ coil: { ...coil, ...part } });
  const longer = ignition.dwell.map((row) => ({ ...row, dwell: row.dwell * 1000 }));
  return [
    ...change('dwell_more', 'ignition.dwell', 'a thousand times as long', {
      ignition: { ...ignition, dwell: longer },
    }),
    ...(inductance === null
      ? []
      : [
          ...change(
            'henry_more',
            'coil.inductance',
            'a thousand times as much',
            withCoil({ inductance: inductance * 1000 }),
          ),
          ...change(
            'henry_less',
            'coil.inductance',
            'a thousandth of it',
            withCoil({ inductance: inductance / 1000 }),
          ),
        ]),
    ...(resistance === null
      ? []
      : change(
          'ohm_less',
          'coil.resistance',
          'a thousandth of it',
          withCoil({ resistance: resistance / 1000 }),
        )),
  ];
}

/** The fuse where it may sit at the farthest, when it sits farther from the source than that. */
function nearerFuse({ evaluation: e }: Result, run: number): Change[] {
  const { design } = e;
  const fuse = design.runs[run]?.fuse as Fuse;
  const most = e.number('fuse_distance');
  if (most === null || fuse.from_source === null || fuse.from_source <= most) return [];
  return [
    {
      kind: 'place',
      design: withRun(design, run, { fuse: { ...fuse, from_source: most } }),
      says: () =>
        `the fuse of ${nameOf(design, run)} at most ${printQuantity('fuse_distance_given', most, design.units)} from the source`,
      effort: 1,
      parts: [],
    },
  ];
}

/** Every fuse of the shop, then every listed rating of every type, in place of the one that is there. */
function otherFuses(design: Design, run: number): Change[] {
  const fuse = design.runs[run]?.fuse as Fuse;
  const place = `in ${nameOf(design, run)} in place of ${fuse.rating === 'auto' ? 'the one chosen' : `${fuse.rating} A`}, type ${fuse.type}`;
  const change = (now: Fuse & { rating: number }, words: string): Change => ({
    kind: 'fuse',
    design: withRun(design, run, { fuse: now }),
    says: () => `${words} ${place}`,
    effort:
      1 +
      (fuse.rating === 'auto' ? 1 : Math.abs(Math.log(now.rating / fuse.rating))) +
      (now.type === fuse.type ? 0 : 1),
    parts: [],
  });
  const own = fusesOf(design, fuse) as { name: string; fuse: Fuse & { rating: number } }[] | null;
  const there = (type: string, rating: number): boolean =>
    own?.some((one) => one.fuse.type === type && one.fuse.rating === rating) ?? false;
  return [
    ...(own ?? [])
      .filter((one) => one.fuse.type !== fuse.type || one.fuse.rating !== fuse.rating)
      .map((one) => change(one.fuse, `the ${one.fuse.rating} A fuse “${one.name}”, type ${one.fuse.type},`)),
    ...FUSE_RATINGS.rows.flatMap(({ type, rating }): Change[] => {
      if (typeof rating !== 'number' || (type === fuse.type && rating === fuse.rating)) return [];
      if (there(type, rating)) return [];
      const now = { ...fuse, type: type as FuseType, rating, curve: null };
      const another = change(now, `a ${rating} A fuse, type ${type},`);
      return [own === null ? another : toOrder(another)];
    }),
  ];
}

/** Contact ratings that are sold. */
const CONTACTS = [30, 40, 50, 70, 100] as const;

/** The relay as it is made for the next system voltage, at the same power: with the square of the voltage in ohms. */
function nextClass({ pull_in, drop_out, coil }: Relay): [Partial<Relay>, string][] {
  if (pull_in === null) return [];
  const own = RELAY_CLASSES.rows.findIndex((row) => pull_in < row.pull_in);
  const [now, next] = [RELAY_CLASSES.rows[own], RELAY_CLASSES.rows[own + 1]];
  if (now === undefined || next === undefined) return [];
  const times = next.rated / now.rated;
  const part = {
    pull_in: pull_in * times,
    drop_out: drop_out && drop_out * times,
    coil: coil && coil * times ** 2,
    coil_max: next.greatest,
  };
  return [
    [
      part,
      `a relay with a coil for ${next.rated} V that pulls in at ${part.pull_in.toFixed(1)} V or less at 20 °C`,
    ],
  ];
}

function otherRelays(design: Design, run: number, { evaluation: e }: Result): Change[] {
  const relay = design.runs[run]?.relay as Relay;
  const now = e.number('relay_rating', { run }) ?? 0;
  const own = relaysOf(design, relay);
  const change = (part: Partial<Relay>, words: string, effort: number): Change => ({
    kind: 'relay',
    design: withRun(design, run, { relay: { ...relay, ...part } }),
    says: () => `${words} in ${nameOf(design, run)}`,
    effort,
    parts: [],
  });
  const others = [
    ...CONTACTS.filter((rating) => rating > now).map((rating) =>
      change({ rating }, `a ${rating} A relay`, 2 + rating / 100),
    ),
    ...(relay.pull_in === null
      ? []
      : [0.95, 0.9, 0.85, 0.8, 0.75].map((share) => {
          const pullIn = Number(((relay.pull_in as number) * share).toFixed(1));
          return change(
            { pull_in: pullIn },
            `a relay that pulls in at ${pullIn} V or less at 20 °C`,
            3 - share,
          );
        })),
    ...nextClass(relay).map(([part, words]) => change(part, words, 2)),
    ...(relay.suppression === 'none'
      ? [change({ suppression: 'resistor' }, 'a relay with a resistor across its coil', 2)]
      : []),
  ];
  if (own === null) return others;
  return [
    ...own.map((one) => change(one.relay, `the relay “${one.name}”`, 2 + Number(one.relay.rating) / 100)),
    ...others.map(toOrder),
  ];
}

/** Types from which the fuse of a thin branch is taken, in the order in which they are tried. Arbitrary: the small ones. */
const SMALL: readonly FuseType[] = ['C', 'F', 'E'];

/** Fuses at the heads of feed runs: of one, of all those of one bank and of all that want one. */
function addedFuses(design: Design, runs: readonly number[]): Change[] {
  const bare = design.runs.flatMap((run, i) => (run.side === 'feed' && run.fuse === null ? [i] : []));
  const single = bare.filter((run) =>
    design.wires.filter((w) => w.run === run).every(({ coils }) => coils.length === 1),
  );
  const shared = bare.filter((run) => !single.includes(run));
  const wanted = bare.filter((run) => runs.includes(run));
  const sets = [...bare.map((run) => [run]), shared, single, wanted, bare].filter((set) => set.length > 0);
  const different = new Map(sets.map((set) => [set.join(), set]));
  return [...different.values()].flatMap((set) =>
    typesOf(design, SMALL).flatMap(({ type, order }, rank) =>
      [false, true].map((anew) => {
        const change = fusesAt(design, set, type, rank, anew);
        return order ? toOrder(change) : change;
      }),
    ),
  );
}

/** Fuses at the heads of these runs; with `anew` their sizes are chosen as well, since a fuse drops voltage, too. */
function fusesAt(
  design: Design,
  set: readonly number[],
  type: FuseType,
  rank: number,
  anew: boolean,
): Change {
  const count = set.reduce((sum, run) => sum + wiresOf(design, run), 0);
  return {
    kind: anew ? 'fuse and size' : 'fuse added',
    design: set.reduce((now, run) => {
      const { ambient, gauge } = design.runs[run] as Run;
      const fuse = { type, rating: 'auto', ambient, from_source: null } as Fuse;
      return withRun(now, run, { fuse, gauge: anew ? 'auto' : gauge });
    }, design),
    says: ({ evaluation: e }) =>
      set
        .map((run) => {
          const each = wiresOf(design, run);
          const rating = printQuantity('fuse_rating', e.number('fuse_rating', { run }));
          const size = anew ? `, the wire ${say(e, 'gauge', { run })}` : '';
          return each === 1
            ? `a ${rating} fuse, type ${type}, at the head of ${nameOf(design, run)}${size}`
            : `a ${rating} fuse, type ${type}, at the head of each of the ${each} wires of ${nameOf(design, run)}${size}`;
        })
        .join('; '),
    effort: 3 + count / 2 + rank / 4 + (anew ? 2 : 0),
    parts: [`${count} fuse${count === 1 ? '' : 's'} with holder`],
  };
}

/** One run in each larger size, then all of them as small as every rule lets them be. */
function sizes(result: Result, runs: readonly number[]): Change[] {
  const { design } = result.evaluation;
  const one = runs.flatMap((run) => {
    const now = String(result.evaluation.value('gauge', { run }));
    const series = now.split(' ')[1] as Series;
    const all = SIZES[series];
    const larger = all.slice(all.indexOf(now.split(' ')[0] as string) + 1).map((size) => `${size} ${series}`);
    return larger
      .filter((size) => isTaken(design, run, size))
      .map((gauge, i): Change => {
        const change: Change = {
          kind: 'size',
          design: withRun(design, run, { gauge }),
          says: () => `${printSize(gauge)} for ${nameOf(design, run)} in place of ${printSize(now)}`,
          effort: 4 + i + wiresOf(design, run) / 4,
          parts: [],
        };
        return isShelved(design.shelf, gauge, design.runs[run]?.insulation ?? '') ? change : toOrder(change);
      });
  });
  const stated = runs.filter((run) => design.runs[run]?.gauge !== 'auto');
  const together: Change = {
    kind: 'size',
    // What lies there already need not become thinner.
    design: stated.reduce(
      (now, run) =>
        withRun(now, run, { gauge: 'auto', smallest: String(result.evaluation.value('gauge', { run })) }),
      design,
    ),
    says: (found) =>
      stated
        .filter((run) => sizeIn(found, run) !== sizeIn(result, run))
        .map((run) => `${sizeIn(found, run)} for ${nameOf(design, run)} in place of ${sizeIn(result, run)}`)
        .join(', '),
    effort: 5 + stated.length,
    parts: [],
  };
  return [...one, ...(stated.length > 1 ? [together] : [])];
}

/** A run needs one at either end. */
const LEAST_JOINTS = 2;

function fewerJoints(design: Design, run: number): Change[] {
  const { joints } = design.runs[run] as Run;
  return Array.from({ length: Math.max(0, joints - LEAST_JOINTS) }, (_, i) => joints - 1 - i).map(
    (fewer) => ({
      kind: 'joints' as const,
      design: withRun(design, run, { joints: fewer }),
      says: () => `${fewer} joints in ${nameOf(design, run)} in place of ${joints}`,
      effort: 3 + (joints - fewer) / 2,
      parts: [],
    }),
  );
}

/** Shares of its length that a run could be laid in: a detour taken out, not another place of the battery. Arbitrary. */
const SHORTER = [0.9, 0.8, 0.7, 0.6, 0.5] as const;

function shorter(design: Design, run: number): Change[] {
  const own = design.wires.filter((wire) => wire.run === run);
  if (own.length !== 1) return [];
  return SHORTER.map((share) => ({
    kind: 'length' as const,
    design: {
      ...design,
      wires: design.wires.map((wire) => (wire.run === run ? { ...wire, length: wire.length * share } : wire)),
    },
    says: ({ evaluation: e }) => {
      const wire = design.wires.findIndex((one) => one.run === run);
      return `${nameOf(design, run)} laid in ${say(e, 'wire_length', { wire })} at most`;
    },
    effort: 4 + 4 * (1 - share),
    parts: [],
  }));
}
