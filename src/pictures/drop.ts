/** Where the drop arises: each run on the path of the worst coil, at the firing with the lowest supply. */
import { printNumber, printValue } from '../basis/print.ts';
import type { Evaluation } from '../engine/evaluate.ts';
import { axisOf, note, type Part, type Picture } from './chart.ts';
import { coilName } from './trace-lines.ts';
import { shortened } from './words.ts';

/** Height of a row [px], and half a bar as a share of it. */
const ROW = 26;
const BAR = 0.32;

/** The picture, by the closed forms that report and workbook state. */
export function dropPicture(e: Evaluation): Picture {
  const { design } = e;
  const point = (e.number('worst_drop_point') ?? 1) - 1;
  const event = (e.number('worst_firing') ?? 1) - 1 - point * design.events.length;
  const carries = (wire: number, at: number): number => e.number('carries', { wire, event: at }) ?? 0;
  // Each conductor on the path, with the current of every coil that it carries at that instant.
  const drops = design.wires.map(
    (_, wire) =>
      (e.number('wire_ohm', { wire }) ?? 0) *
      carries(wire, event) *
      design.events.reduce(
        (sum, __, event2) =>
          sum + carries(wire, event2) * (e.number('flowing_at', { point, event, event2 }) ?? 0),
        0,
      ),
  );
  const volts = design.runs.map((_, run) =>
    drops.reduce((sum, drop, wire) => sum + (design.wires[wire]?.run === run ? drop : 0), 0),
  );
  const whole = e.number('worst_drop') ?? 0;
  const coil = coilName(design.coils[design.events[event]?.coil ?? 0]?.id ?? '');
  const share = (drop: number): string => printNumber(whole > 0 ? (drop / whole) * 100 : 0);
  const told = design.runs.map(({ name }, i) => {
    const drop = volts[i] ?? 0;
    return `${shortened(name, 26)} ${drop > 0 ? `${printValue(drop, 'V', 'mV')}, ${share(drop)} %` : 'not on its path'}`;
  });
  const count = volts.length;
  return {
    name: 'drop',
    title: design.title,
    subtitle: `Drop by run at ${design.points[point]?.name ?? ''}, as ${coil} fires: ${printValue(whole, 'V')} in all`,
    description: `Drop of each run on the path of ${coil}: ${told.join('; ')}.`,
    stacks: [
      {
        title: `Drop of each run on the path of ${coil}`,
        x: axisOf('Drop', 'mV', [0, ...volts.map((drop) => drop * 1e3)]),
        panels: [
          {
            title: 'From the battery to the coil and back; share of the whole drop',
            height: ROW * count,
            y: { label: '', unit: '', from: 0, to: count },
            parts: volts.flatMap((drop, i): Part[] => {
              const y = count - 0.5 - i;
              const bar = {
                x: 0,
                x2: drop * 1e3,
                y: y - BAR,
                y2: y + BAR,
                fill: 'tint',
                edge: 'plain',
              } as const;
              return [{ kind: 'box', ...bar }, note(y, told[i] as string)];
            }),
          },
        ],
      },
    ],
  };
}
