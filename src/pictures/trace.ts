/** Currents and supplies of one operating point in time. */
import { printNumber, printValue } from '../basis/print.ts';
import type { Trace } from '../transient/trace.ts';
import { chargeStack } from './charge.ts';
import {
  type Axis,
  across,
  axisOf,
  type Line,
  line,
  note,
  type Panel,
  type Picture,
  type Stack,
} from './chart.ts';
import {
  type CoilLine,
  carriedBy,
  coilLines,
  coilName,
  lowestFiring,
  type SharedLine,
  sharedLines,
  worstOf,
} from './trace-lines.ts';
import { shortened } from './words.ts';

const HEIGHT = { shared: 96, coils: 150, supply: 120 };

/** A limit is shown that lies less than this many times as high as the currents. */
const NEAR = 1.25;
/** Least height of the axis of supplies [V]: a stiff feed looks stiff. */
const STIFF = 0.1;
/** Room above the highest current for the names of the coils, as a factor. */
const NAMES = 1.2;

/**
 * The picture of a trace. `wires` are the conductors to show, by index; all when it is left out. A panel for each group
 * of conductors that share a current, one for the currents of the coils, one for the supply at them, and the charge of
 * the coil with the lowest supply in milliseconds.
 */
export function tracePicture(trace: Trace, wires?: readonly number[]): Picture {
  const { evaluation: e, point, circuit } = trace;
  const { design } = e;
  const chosen = wires ?? [...design.wires.keys()];
  const shared = sharedLines(trace, chosen);
  const single = chosen.filter((wire) => design.wires[wire]?.coils.length === 1);
  const coils = carriedBy(trace, single.length > 0 ? single : chosen);
  const lines = coilLines(trace, coils);
  const worst = lines[coils.indexOf(worstOf(trace, coils))] as CoilLine;
  const rpm = `${printNumber(e.number('speed', { speed: point }))} rpm`;
  // A speed of the sweep has no name.
  const name = design.points[point]?.name;
  const clipped = e.number('clipped', { speed: point }) === 1 ? ' (cut short)' : '';
  const x: Axis = angleAxis(trace);
  const cycle: Stack = {
    title: 'Currents over one working cycle, and supply at the coils',
    x,
    panels: [
      ...sharedPanels(shared, x),
      ...(single.length > 0 || shared.length === 0 ? [coilPanel(trace, lines, worst, x)] : []),
      supplyPanel(trace, lines, worst, x),
    ],
  };
  return {
    name: 'trace',
    title: design.title,
    subtitle:
      `Currents at ${name === undefined ? '' : `${name}: `}${rpm}, ${printValue(circuit.supply, 'V')}, ` +
      `dwell ${printValue(circuit.dwell, 's')}${clipped}, one working cycle of ${printValue(circuit.cycle, 's')}`,
    description:
      `Currents over one working cycle at ${name ?? rpm}. ` +
      shared.map((line) => `${line.name}: ${figuresOf(line)}. `).join('') +
      (circuit.dwell > 0
        ? `Lowest supply at a firing: ${coilName(worst.id)}, ` +
          `${printValue(lowestFiring(worst).supply, 'V')}, ${printValue(lowestFiring(worst).current, 'A')}.`
        : 'No coil is charged.'),
    stacks: [cycle, ...(circuit.dwell > 0 ? [chargeStack(trace, worst, shared)] : [])],
  };
}

const figuresOf = ({ peak, effective, average }: SharedLine): string =>
  `peak ${printNumber(peak)} A, effective (RMS) ${printNumber(effective)} A, average ${printNumber(average)} A`;

/** Crank angle over one working cycle, with the time below. */
const angleAxis = ({ circuit: { cycle, cycleAngle } }: Trace): Axis => ({
  label: 'Crank angle',
  unit: '°',
  from: 0,
  to: cycleAngle,
  ticks: Array.from({ length: 9 }, (_, i) => (i * cycleAngle) / 8),
  also: { label: 'time', unit: 'ms', per: (cycle * 1e3) / cycleAngle },
});

/** A panel for each current that several coils share, all on one scale. */
function sharedPanels(lines: readonly SharedLine[], x: Axis): Panel[] {
  const y = axisOf('Current', 'A', [0, 1, ...lines.map(({ peak }) => peak)]);
  return lines.map(({ name, points, peak, effective, average }) => ({
    title: name,
    height: HEIGHT.shared,
    y,
    parts: [
      { kind: 'area', fill: 'tint', points: points.map((p) => ({ ...p, y2: 0 })) },
      line(points, 'strong', { name }),
      note(peak, `peak ${printNumber(peak)} A`),
      across(x, effective, 'plain', 1, `effective (RMS) ${printNumber(effective)} A`),
      across(x, average, 'plain', 2, `average ${printNumber(average)} A`),
    ],
  }));
}

/** A line for each coil, that of the worst one dark, on top and with a name. */
const eachCoil = (
  lines: readonly CoilLine[],
  worst: CoilLine,
  key: 'current' | 'supply',
  name: string,
): Line[] => [
  ...lines.filter((one) => one !== worst).map((one) => line(one[key], 'quiet')),
  line(worst[key], 'strong', { name: `${name}${coilName(worst.id)}` }),
];

/** The currents of the coils, each named where it fires. */
function coilPanel({ circuit, coils }: Trace, lines: readonly CoilLine[], worst: CoilLine, x: Axis): Panel {
  const { limit, dwell } = circuit;
  const highest = Math.max(1, ...lines.flatMap(({ firings }) => firings.map(({ current }) => current)));
  const limited = limit <= highest * NEAR;
  const which = lines.length < coils.length ? 'Some coils' : 'Each coil';
  return {
    title:
      lines.length === 1
        ? `Current of ${coilName(worst.id)}`
        : `${which}, with its name at its firing; thick: ${coilName(worst.id)}, the lowest supply at a firing`,
    height: HEIGHT.coils,
    y: { label: 'Current', unit: 'A', from: 0, to: NAMES * (limited ? Math.max(limit, highest) : highest) },
    parts: [
      ...eachCoil(lines, worst, 'current', ''),
      ...(limited ? [across(x, limit, 'limit', 2, `limit ${printNumber(limit)} A`)] : []),
      { kind: 'names', names: dwell > 0 ? firingNames(lines, worst) : [] },
    ],
  };
}

/** Coils that fire together share a name. */
function firingNames(lines: readonly CoilLine[], worst: CoilLine) {
  const byAngle = new Map<number, { x: number; text: string; strong: boolean }>();
  for (const line of lines)
    for (const { x } of line.firings) {
      const there = byAngle.get(x);
      byAngle.set(x, {
        x,
        text: there ? `${there.text}, ${line.id}` : line.id,
        strong: line === worst || there?.strong === true,
      });
    }
  return [...byAngle.values()].sort((a, b) => a.x - b.x);
}

function supplyPanel({ circuit }: Trace, lines: readonly CoilLine[], worst: CoilLine, x: Axis): Panel {
  const { supply, dwell } = circuit;
  const fires = lowestFiring(worst);
  const all = lines.flatMap((one) => one.supply.map(({ y }) => y));
  const text = `${shortened(coilName(worst.id), 17)} fires at ${fires.supply.toFixed(2)} V`;
  return {
    title: `Supply at ${lines.length === 1 ? 'the coil' : `the coils; thick: ${coilName(worst.id)}`}`,
    height: HEIGHT.supply,
    y: axisOf('Supply', 'V', [supply, ...all], STIFF),
    parts: [
      ...eachCoil(lines, worst, 'supply', 'supply at '),
      across(x, supply, 'plain', 1, `battery posts ${supply.toFixed(2)} V`),
      ...(dwell > 0
        ? [
            { kind: 'marks', points: [{ x: fires.x, y: fires.supply }], look: 'strong' } as const,
            note(fires.supply, text),
          ]
        : []),
    ],
  };
}
