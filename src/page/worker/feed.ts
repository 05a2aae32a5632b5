/** The parts of the feed as the picture of it shows them: what each carries, drops and is heated to, beside what it may. */
import type { At } from '../../basis/quantity.ts';
import { runKey } from '../../design/layout.ts';
import { keyText } from '../../design/problems.ts';
import type { Evaluation } from '../../engine/evaluate.ts';
import { frame } from '../../engine/frame.ts';
import type { QuantityName } from '../../model/model.ts';
import { labelOf, printQuantity, say } from '../../views/print.ts';
import { standsIn } from '../../views/stand-in.ts';
import { worstCoil, worstDropPoint } from '../../views/table.ts';
import { type View as Listed, quantityOf } from '../../views/view.ts';
import { COIL, FUSE, LOAD, RELAY, WIRE } from '../../views/views.ts';
import type { Budget, Card, FigureText, Mode, PartOf, Share } from '../protocol.ts';

/** What stands over what, in each view of the picture; for coils the other way round: what they must have over what they get. */
interface Over {
  readonly value: QuantityName;
  readonly limit: QuantityName | null;
  readonly least?: true;
}
const OVER: Readonly<Record<PartOf['kind'], Partial<Record<Mode, Over>>>> = {
  wire: {
    load: { value: 'worst_effective', limit: 'amps_allowed' },
    drop: { value: 'wire_worst_drop', limit: 'drop_limit' },
    temperature: { value: 'wire_T', limit: 'rating' },
    energy: { value: 'wire_ohm', limit: null },
  },
  fuse: { load: { value: 'worst_effective', limit: 'fuse_allowed' } },
  relay: { load: { value: 'worst_effective', limit: 'relay_allowed' } },
  coil: {
    load: { value: 'coil_peak', limit: 'max_peak' },
    drop: { value: 'coil_drop', limit: 'drop_limit' },
    energy: { value: 'coil_energy', limit: 'energy_limit', least: true },
  },
};

/** Members that the quantity is for, of those at hand. */
export const within = (name: QuantityName, at: At): At =>
  Object.fromEntries(frame(name).axes.map((axis) => [axis, at[axis] ?? 0]));

function shareOf(e: Evaluation, { value, limit, least }: Over, at: At): Share | null {
  const own = e.number(value, within(value, at));
  const { units } = e.design;
  // A conductor off the worst path has a drop of its own, which is none of that path.
  if (value === 'wire_worst_drop' && own === 0) return null;
  // Sizes that only stand in carry nothing.
  if (own === null || standsIn(e, value, at) || (limit !== null && standsIn(e, limit, at))) return null;
  const most = limit === null ? null : e.number(limit, within(limit, at));
  const text = printQuantity(value, own, units);
  return {
    share: most === null || most === 0 ? null : least ? most / own : own / most,
    text,
    limit: limit === null || most === null ? '' : printQuantity(limit, most, units, value),
    of: { quantity: value, at: within(value, at) },
  };
}

const sharesOf = (e: Evaluation, kind: PartOf['kind'], at: At): PartOf['shares'] =>
  Object.fromEntries(
    (Object.entries(OVER[kind]) as [Mode, Over][]).map(([mode, over]) => [mode, shareOf(e, over, at)]),
  );

/** The point at which a conductor carries most. */
const worstPoint = (e: Evaluation, wire: number): number => (e.number('worst_point', { wire }) ?? 1) - 1;

const placeOfWire = (e: Evaluation, wire: number): At => {
  const run = e.design.wires[wire]?.run ?? 0;
  return { wire, run, feed: run, point: worstPoint(e, wire) };
};

export function partsOf(e: Evaluation): PartOf[] {
  const { wires, runs, coils } = e.design;
  const point = worstDropPoint(e);
  return [
    ...wires.flatMap(({ id, run }, wire): PartOf[] => {
      const at = placeOfWire(e, wire);
      const key = keyText(runKey(e.design, run));
      const { fuse, relay } = runs[run] as (typeof runs)[number];
      const part = (kind: 'wire' | 'fuse' | 'relay', name: string, on: string): PartOf => ({
        kind,
        id,
        name,
        key: on,
        shares: sharesOf(e, kind, at),
      });
      return [
        part('wire', say(e, 'gauge', at), key),
        ...(fuse === null ? [] : [part('fuse', say(e, 'fuse_rating', at), `${key}.fuse`)]),
        ...(relay === null ? [] : [part('relay', say(e, 'relay_rating', at), `${key}.relay`)]),
      ];
    }),
    ...coils.map(
      ({ id }, coil): PartOf => ({
        kind: 'coil',
        id,
        name: id,
        key: 'coil',
        shares: sharesOf(e, 'coil', { coil, point }),
      }),
    ),
  ];
}

/** The drop on the worst path, run after run; each divided by what makes it: conductor, joints, fuse, contact. */
export function budgetOf(e: Evaluation): Budget {
  const { units } = e.design;
  const runs = (standsIn(e, 'worst_drop') ? [] : e.design.runs).flatMap(({ name, side }, run) => {
    const drop = e.number('run_drop', { run }) ?? 0;
    const wire = e.design.wires.findIndex(
      (w, i) => w.run === run && (e.number('wire_worst_drop', { wire: i }) ?? 0) > 0,
    );
    if (wire < 0) return [];
    const ohm = (of: QuantityName): number => e.number(of, within(of, { wire, run })) ?? 0;
    const [fuse, contact] = [ohm('fuse_ohm'), ohm('contact_ohm')];
    const whole = ohm('wire_ohm');
    const pieces = [
      ['conductor', ohm('wire_copper_ohm')],
      ['joints', ohm('fixed_ohm') - fuse - contact],
      ['fuse', fuse],
      ['relay', contact],
    ] as const;
    return [
      {
        run: name,
        side,
        volts: drop,
        text: printQuantity('run_drop', drop, units),
        share: printQuantity('run_drop_share', e.number('run_drop_share', { run }), units),
        of: { quantity: 'run_drop' as const, at: { run } },
        parts: pieces.flatMap(([what, own]) => (own > 0 && whole > 0 ? [{ what, share: own / whole }] : [])),
      },
    ];
  });
  return {
    coil: e.design.coils[worstCoil(e)]?.id ?? '',
    point: e.design.points[worstDropPoint(e)]?.name ?? '',
    volts: e.number('worst_drop') ?? 0,
    limit: e.number('drop_limit') ?? 0,
    text: say(e, 'worst_drop'),
    limitText: say(e, 'drop_limit'),
    runs,
  };
}

/** Everything that is read of one part. */
export function cardOf(
  given: Evaluation,
  kind: PartOf['kind'],
  id: string,
  units: Evaluation['design']['units'],
): Card | null {
  const e = { ...given, design: { ...given.design, units } };
  const figures = (view: Listed, at: At): FigureText[] =>
    view.read.map(quantityOf).map((quantity) => ({
      label: labelOf(quantity),
      text: say(e, quantity, within(quantity, at)),
      of: { quantity, at: within(quantity, at) },
    }));
  if (kind === 'coil') {
    const coil = e.design.coils.findIndex((one) => one.id === id);
    const point = worstDropPoint(e);
    if (coil < 0) return null;
    return {
      title: `Coil ${id} at ${e.design.points[point]?.name ?? ''}`,
      figures: figures(COIL, { coil, point }),
    };
  }
  const wire = e.design.wires.findIndex((one) => one.id === id);
  if (wire < 0) return null;
  const at = placeOfWire(e, wire);
  if (kind === 'fuse') return { title: `Fuse in ${id}`, figures: figures(FUSE, at) };
  if (kind === 'relay') return { title: `Relay in ${id}`, figures: figures(RELAY, at) };
  return {
    title: `${id}: ${say(e, 'gauge', at)}, ${say(e, 'wire_length', at)}`,
    figures: [...figures(WIRE, at), ...figures(LOAD, at)],
  };
}
