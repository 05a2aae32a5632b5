/** Where the drop arises: each run on the path of the worst coil, at the firing with the lowest supply. */
import { printSize } from '../basis/print.ts';
import type { Evaluation } from '../engine/evaluate.ts';
import { printQuantity } from '../views/print.ts';
import { worstCoil, worstDropPoint } from '../views/table.ts';
import { axisOf, note, type Part, type Picture } from './chart.ts';
import { coilName } from './trace-lines.ts';
import { shortened } from './words.ts';

/** Height of a row [px], and half a bar as a share of it. */
const ROW = 26;
const BAR = 0.32;

/** The picture, by the closed forms that report and workbook state. */
export function dropPicture(e: Evaluation): Picture {
  const { design } = e;
  const point = worstDropPoint(e);
  const volts = design.runs.map((_, run) => e.number('run_drop', { run }) ?? 0);
  const whole = e.number('worst_drop') ?? 0;
  const coil = coilName(design.coils[worstCoil(e)]?.id ?? '');
  const told = design.runs.map(({ name }, i) => {
    const drop = volts[i] ?? 0;
    const stand =
      e.number('undone', { run: i }) === 1
        ? `, no size found, here ${printSize(String(e.value('gauge', { run: i })))},`
        : '';
    return `${shortened(name, 26)}${stand} ${drop > 0 ? `${printQuantity('run_drop', drop)}, ${printQuantity('run_drop_share', e.number('run_drop_share', { run: i }))}` : 'not on its path'}`;
  });
  const count = volts.length;
  return {
    name: 'drop',
    title: design.title,
    subtitle: `Drop by run at ${design.points[point]?.name ?? ''}, as ${coil} fires: ${printQuantity('worst_drop', whole)} in all`,
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
