/** What readings would not show: of each part the smallest fault that they would, with its heat and its drop. */
import type { Evaluation } from '../engine/evaluate.ts';
import { type Hypothesis, ODDS, type Part } from './causes.ts';
import { NAMED } from './diagnose.ts';
import type { Inference } from './infer.ts';

export interface Unseen {
  readonly part: Part;
  /** A resistance [ohm], a factor of R or L, volts, a factor of the dwell: the smallest that would show; null: none would. */
  readonly how: Hypothesis['how'];
  readonly size: number | null;
  /** What such a resistance makes at full load: heat [W] and drop at the peak [V]; null for what is none. */
  readonly watts: number | null;
  readonly volts: number | null;
}

/** What the sizes that a cause could have had take off its worth, about [ln]: a size known to a twentieth of its range. */
const OCCAM = 3;

export function unseen(e: Evaluation, { causes, shows }: Inference): Unseen[] {
  return causes.flatMap((cause): Unseen[] => {
    const { part, how } = cause;
    if (!['wire', 'coil', 'dwell', 'supply'].includes(part.is) || how === 'turns' || how === 'open')
      return [];
    if (part.is === 'supply' && part.point === null) return [];
    // As sure as a part is named: its odds against nothing being wrong, turned round.
    const needed = Math.log((NAMED / (1 - NAMED)) * (ODDS.sound / cause.odds)) + OCCAM;
    const size = Math.sqrt((2 * needed) / shows(cause));
    const seen = size < cause.to;
    const said = cause.unit === 'ln' ? Math.exp(size) : size;
    if (part.is !== 'wire') return [{ part, how, size: seen ? said : null, watts: null, volts: null }];
    const amps = (name: 'worst_effective', wire: number): number => e.number(name, { wire }) ?? 0;
    const peak = Math.max(
      ...e.design.points.map((_, point) => e.number('peak_current', { wire: part.wire, point }) ?? 0),
    );
    return [
      {
        part,
        how,
        size: seen ? size : null,
        watts: seen ? amps('worst_effective', part.wire) ** 2 * size : null,
        volts: seen ? peak * size : null,
      },
    ];
  });
}

/** What would show only when it drops a volt, or glows, is as good as not seen. Arbitrary. */
const BLIND = { watts: 20, volts: 1 };

export const blinds = ({ size, watts, volts }: Unseen): boolean =>
  size === null || (watts ?? 0) > BLIND.watts || (volts ?? 0) > BLIND.volts;
