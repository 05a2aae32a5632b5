/** What the second of two feeds gives that the first does not, in one sentence for a customer. */
import { printNumber, printValue } from '../basis/print.ts';
import type { Exact } from './exact.ts';

/** A point that both feeds have: speed [rpm], supply at the battery posts [V], and what each feed makes of it. */
export interface Gained {
  readonly name: string;
  readonly rpm: number | null;
  readonly volts: number | null;
  readonly exact: readonly [Exact | null, Exact | null];
}

/** Less than this share is no gain that anybody would notice. Arbitrary. */
const WORTH = 0.005;

interface Told {
  readonly name: string;
  readonly rpm: number | null;
  /** Supply at the battery posts [V]. */
  readonly volts: number | null;
  /** Energy that the weakest coil gets with each [J]. */
  readonly energies: readonly [number, number];
}

/** `228 mJ in place of 171 mJ, 33 % more` */
function change([a, b]: readonly [number, number]): string {
  const share = b / a - 1;
  if (Math.abs(share) < WORTH) return `${printValue(b, 'J')}, as much as before`;
  return `${printValue(b, 'J')} in place of ${printValue(a, 'J')}, ${printNumber(Math.abs(share) * 100, 2)} % ${share > 0 ? 'more' : 'less'}`;
}

const place = ({ name, rpm }: Told): string =>
  rpm === null ? `At ${name}` : `At ${name}, ${Math.round(rpm)} rpm,`;

/** At the highest speed, and at the lowest supply where that is another point. Null where no energy is known. */
export function gainOf(points: readonly Gained[]): string | null {
  const told = points.flatMap(({ name, rpm, volts, exact }): Told[] =>
    exact[0] === null || exact[1] === null || exact[0].energy === 0
      ? []
      : [{ name, rpm, volts, energies: [exact[0].energy, exact[1].energy] }],
  );
  const [first] = told;
  if (first === undefined) return null;
  const fastest = told.reduce((a, b) => ((b.rpm ?? 0) > (a.rpm ?? 0) ? b : a), first);
  const lowest = told.reduce((a, b) => ((b.volts ?? 1e9) < (a.volts ?? 1e9) ? b : a), first);
  const also = lowest === fastest ? '' : `; ${place(lowest).replace('At', 'at')} ${change(lowest.energies)}`;
  return `${place(fastest)} the weakest coil gets ${change(fastest.energies)}${also}.`;
}
