/** Currents and supplies of one operating point over the crank angle. */
import { printNumber, printValue } from '../basis/print.ts';
import type { Trace } from '../transient/trace.ts';
import { angleAxis, straight } from './axes.ts';
import { chargePanel } from './charge.ts';
import { coilPanel } from './coil-panel.ts';
import { rightLabels, rule } from './layers.ts';
import { type Panel, type Picture, picture, rows } from './picture.ts';
import { LIGHT, type Theme, WIDTH } from './theme.ts';
import {
  type CoilLine,
  carriedBy,
  coilLines,
  lowestFiring,
  type SharedLine,
  sharedLines,
  worstOf,
} from './trace-lines.ts';
import { shortened } from './words.ts';

const HEIGHT = { shared: 96, supply: 120 };

/** Room above the highest line for what is written there, share of the axis. */
const HEADROOM = 1.16;

/**
 * The picture of a trace. `wires` are the conductors to show, by index; all when it is left out. A panel for each
 * group of conductors that share a current, one for the currents of the coils, one for the supply at them, and the charge
 * of the coil with the lowest supply in milliseconds.
 */
export function tracePicture(trace: Trace, wires?: readonly number[], theme: Theme = LIGHT): Picture {
  const { evaluation: e, point, circuit } = trace;
  const { design } = e;
  const chosen = wires ?? [...design.wires.keys()];
  const shared = sharedLines(trace, chosen);
  const single = chosen.filter((wire) => design.wires[wire]?.coils.length === 1);
  const coils = carriedBy(trace, single.length > 0 ? single : chosen);
  const lines = coilLines(trace, coils);
  const worst = lines[coils.indexOf(worstOf(trace, coils))] as CoilLine;
  const name = design.points[point]?.name ?? '';
  const clipped = e.number('clipped', { speed: point }) === 1 ? ' (cut short)' : '';
  return picture(
    {
      name: 'trace',
      title: design.title,
      subtitle:
        `Currents at ${name}: ${printNumber(e.number('speed', { speed: point }))} rpm, ` +
        `${printValue(circuit.supply, 'V')}, dwell ${printValue(circuit.dwell, 's')}${clipped}, one working cycle of ` +
        `${printValue(circuit.cycle, 's')}`,
      description:
        `Currents over one working cycle at ${name}. ` +
        shared.map((line) => `${line.name}: ${figuresOf(line)}. `).join('') +
        (circuit.dwell > 0
          ? `The lowest supply at its firing has coil ${worst.id}: ` +
            `${printValue(lowestFiring(worst).supply, 'V')}, ${printValue(lowestFiring(worst).current, 'A')}.`
          : 'No coil is charged.'),
    },
    [
      ...sharedPanels(trace, shared, theme),
      ...(single.length > 0 || shared.length === 0 ? [coilPanel(trace, lines, worst, theme)] : []),
      supplyPanel(trace, lines, worst, theme),
      ...(circuit.dwell > 0 ? [chargePanel(trace, worst, sharedLines(trace, chosen), theme)] : []),
    ],
    theme,
  );
}

const figuresOf = ({ peak, effective, average }: SharedLine): string =>
  `peak ${printNumber(peak)} A, effective ${printNumber(effective)} A, average ${printNumber(average)} A`;

/** A panel for each current that several coils share, all on one scale. */
function sharedPanels(trace: Trace, lines: readonly SharedLine[], theme: Theme): Panel[] {
  const top = Math.max(1, ...lines.map(({ peak }) => peak)) * HEADROOM;
  const x = angleAxis(trace.circuit, false);
  const y = straight('y', 'Current in A', [0, top], { tickCount: 4 });
  return lines.map((line) => {
    const { peak, effective, average } = line;
    const labels = [
      { value: peak, text: `peak ${printNumber(peak)} A` },
      { value: effective, text: `effective ${printNumber(effective)} A` },
      { value: average, text: `average ${printNumber(average)} A` },
    ];
    return {
      title: shortened(line.name, 90),
      width: WIDTH,
      height: HEIGHT.shared,
      layer: [
        {
          data: rows(line.points),
          mark: { type: 'area', color: theme.tint, line: { color: theme.strong, strokeWidth: 1.4 } },
          encoding: { x, y: { ...y, stack: null } },
        },
        rule(effective, [8, 3], theme.ink),
        rule(average, [2, 2], theme.ink),
        ...rightLabels(
          labels,
          { least: 0, most: top, height: HEIGHT.shared },
          trace.circuit.cycleAngle,
          theme,
        ),
      ],
    };
  });
}

function supplyPanel(trace: Trace, lines: readonly CoilLine[], worst: CoilLine, theme: Theme): Panel {
  const { supply, dwell, cycleAngle } = trace.circuit;
  const fires = lowestFiring(worst);
  const lowest = Math.min(...lines.flatMap((line) => line.supply.map(({ y }) => y)));
  const room = Math.max(0.05, supply - lowest) * 0.12;
  const ends = { least: lowest - room, most: supply + room, height: HEIGHT.supply };
  const x = angleAxis(trace.circuit, true);
  const y = straight('y', 'Supply in V', [ends.least, ends.most]);
  const labels = [
    { value: supply, text: `battery posts ${supply.toFixed(2)} V` },
    ...(dwell > 0
      ? [
          {
            value: fires.supply,
            text: `coil ${shortened(worst.id, 12)} fires at ${fires.supply.toFixed(2)} V`,
          },
        ]
      : []),
  ];
  return {
    title: `Supply at ${lines.length === 1 ? 'the coil' : `the coils; dark: coil ${worst.id}`}`,
    width: WIDTH,
    height: HEIGHT.supply,
    layer: [
      {
        data: rows(
          lines.filter((line) => line !== worst).flatMap(({ id, supply: s }) => s.map((p) => ({ ...p, id }))),
        ),
        mark: { type: 'line', color: theme.faint, strokeWidth: 1 },
        encoding: { x, y, detail: { field: 'id', type: 'nominal' } },
      },
      {
        data: rows(worst.supply),
        mark: { type: 'line', color: theme.strong, strokeWidth: 1.6 },
        encoding: { x, y },
      },
      {
        data: rows(dwell > 0 ? [{ x: fires.x, y: fires.supply }] : []),
        mark: { type: 'point', filled: true, size: 40, color: theme.strong, opacity: 1 },
        encoding: { x, y },
      },
      rule(supply, [8, 3], theme.ink),
      ...rightLabels(labels, ends, cycleAngle, theme),
    ],
  };
}
