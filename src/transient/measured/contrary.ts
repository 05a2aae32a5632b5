/** Where a recording is so far from the design that something is mixed up: said first, with the likely reason. */
import { printNumber, printValue } from '../../basis/print.ts';
import { listed, quote } from '../../design/problems.ts';
import type { Trace } from '../trace.ts';
import type { MeasuredTrace } from './measure.ts';

export interface Beside {
  readonly resistance: number;
  readonly inductance: number;
  readonly dwell: number;
  readonly peak: number;
}

/** From this factor on, up or down, it is no fault of a part but something mixed up. Arbitrary. */
const FAR = 3;
/** Charges that bend alike within this factor come from alike coils. Arbitrary. */
const ALIKE = 2;

const within = (ratio: number, factor: number): boolean => ratio < factor && ratio > 1 / factor;
/** `10 times`, `0.1 times` */
const times = (ratio: number): string => `${printNumber(ratio, 2)} times`;

/** Sentences, the weightiest first; none where recording and design are of a kind. */
export function contraryTo(measured: MeasuredTrace, design: Beside): string[] {
  const steep = design.inductance / measured.inductance.value;
  const bend =
    measured.inductance.value / measured.resistance.value / (design.inductance / design.resistance);
  const dwell = measured.dwell === null || design.dwell === 0 ? 1 : measured.dwell / design.dwell;
  const told: string[] = [];
  if (!within(steep, FAR) && within(bend, ALIKE))
    told.push(
      `All currents are about ${times(steep)} those of the design, while the charge bends as that of its coil does: most ` +
        'likely the clamp has a different factor (--scale), or the probe of the instrument has.',
    );
  else if (!within(steep, FAR))
    told.push(
      `The current rises ${times(steep)} as steeply as that of the design: most likely the clamp has a different factor ` +
        '(--scale), the channel is the wrong one (--column), or the coil is a different one.',
    );
  if (!within(dwell, FAR))
    told.push(
      `The charges last ${times(dwell)} the dwell of the design: most likely the times are in a different unit, the interval ` +
        'is a different one, or the controller has a different dwell at this point.',
    );
  const loop = measured.resistance.value / design.resistance;
  const sure = measured.resistance.within < Math.abs(measured.resistance.value) / 2;
  if (told.length === 0 && sure && !within(loop, FAR))
    told.push(
      `The loop has ${times(loop)} the resistance of the design: a bad joint, another coil, or a zero of the clamp that ` +
        'is off.',
    );
  if (
    told.length === 0 &&
    measured.peak !== null &&
    design.peak > 0 &&
    !within(measured.peak / design.peak, FAR)
  )
    told.push(`The peak is ${times(measured.peak / design.peak)} that of the design.`);
  return told;
}

/** Differing by less than this share two spacings are the same, as an engine never turns quite evenly. Arbitrary. */
const SAME = 0.1;

/**
 * Whether the charges come as often as one coil fires at this point, or those of a wire that carries several. `wire` is the
 * conductor that is said to be in the clamp, null when none is said.
 */
export function spacingText(
  { circuit, evaluation, point }: Trace,
  wire: number | null,
  spacing: number | null,
): string {
  if (spacing === null) return 'One charge alone does not tell a coil from a bank: record several.';
  const { design } = evaluation;
  const every = (coils: readonly number[]): number =>
    circuit.cycle / Math.max(1, circuit.firings.filter(({ coil }) => coils.includes(coil)).length);
  const own = wire === null ? [0] : (circuit.wires[wire]?.coils ?? [0]);
  const as = (expected: number): boolean => Math.abs(expected / spacing - 1) < SAME;
  const who =
    own.length > 1 ? `the ${own.length} coils of ${design.wires[wire ?? 0]?.id} fire` : 'one coil fires';
  const said = `A charge comes every ${printValue(spacing, 's')}`;
  const where = quote(design.points[point]?.name ?? '');
  if (as(every(own))) return `${said}, as ${who} at ${where}.`;
  const banks = circuit.wires.flatMap(({ coils }, i) =>
    coils.length > own.length && as(every(coils))
      ? [{ id: design.wires[i]?.id ?? '', coils: coils.length }]
      : [],
  );
  const rpm = (evaluation.number('speed', { speed: point }) ?? 0) * (every(own) / spacing);
  const speed = `the engine turned at ${printNumber(rpm, 2)} rpm`;
  const [bank] = banks;
  return bank === undefined
    ? `${said}; at ${where} ${who} every ${printValue(every(own), 's')}: ${speed}, and supply and dwell may be others.`
    : `${said}; at ${where} ${who} every ${printValue(every(own), 's')}: the clamp holds a wire of ${bank.coils} coils ` +
        `(${listed([...new Set(banks.map(({ id }) => id))].slice(0, 3))}), or ${speed}. Of several coils these are the means.`;
}
