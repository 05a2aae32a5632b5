/** Judges a shop's file by itself: what contradicts itself, and what is missing where parts should follow each other. */
import { copper } from '../data/copper.ts';
import { IEC_60228_CLASS_5 } from '../data/iec60228.ts';
import { PRESETS } from '../design/defaults.ts';
import { SIZES } from '../design/names.ts';
import type { Path } from '../design/problems.ts';
import { areaOf } from '../design/shop/limits.ts';
import type { Shop, ShopCoil, ShopFuse, ShopTerminal, ShopWire } from '../design/shop/shop.ts';
import { asSold } from '../design/sold.ts';
import { seriesOf } from '../design/spellings.ts';

/** What is wrong with a part, and where it stands in the file. */
export interface Doubt {
  readonly path: Path;
  readonly part: string;
  readonly words: string;
}

/** How far a measured resistance may be above that of its size. Arbitrary: more is no longer a tolerance of copper. */
const ABOVE = 0.05;
/** Below it a metre would hold a tenth more copper than its size. Arbitrary. */
const BELOW = 0.1;

export function judgeShop(shop: Shop): Doubt[] {
  const each = <T>(key: keyof Shop, of: (part: T) => [string | null, string][]): Doubt[] =>
    ((shop[key] ?? []) as readonly T[]).flatMap((part, i) =>
      of(part).map(([at, words]) => ({
        path: [key, i, ...(at === null ? [] : [at])],
        part: nameOf(part as { name?: string; size?: string; insulation?: string }),
        words,
      })),
    );
  return [
    ...each<ShopCoil>('coils', coil),
    ...each<ShopWire>('wire', wire),
    ...each<ShopFuse>('fuses', fuse),
    ...each<ShopTerminal>('terminals', terminal),
    ...twice(shop),
  ];
}

const nameOf = ({ name, size, insulation }: { name?: string; size?: string; insulation?: string }): string =>
  name ?? `${size}, ${insulation}`;

const tidy = (value: number): string => String(Number(value.toPrecision(3)));

/** A bench test draws no more than the resistance lets through, and a coil charges in one way. */
function coil({
  resistance,
  test_point: test,
  driver_drop = 0,
  ...own
}: ShopCoil): [string | null, string][] {
  const ways = [own.inductance, test, own.peak].filter((way) => way !== undefined).length;
  const found: [string | null, string][] = [];
  if (ways !== 1)
    found.push([
      null,
      ways === 0
        ? 'nothing tells how it charges: inductance, test_point or peak'
        : 'several of inductance, test_point and peak: a design takes exactly one',
    ]);
  if (resistance === undefined && own.peak === undefined) found.push([null, 'without its resistance']);
  if (test === undefined || resistance === undefined) return found;
  const celsius = test.temperature ?? PRESETS.temperature.value;
  const most = (test.supply - driver_drop) / (resistance * heat(celsius));
  if (test.peak >= most)
    found.push([
      'test_point',
      `its bench test reads ${tidy(test.peak)} A, where ${tidy(resistance)} Ω let ${tidy(most)} A through at most`,
    ]);
  return found;
}

/** Resistance of one metre of a size at 20 °C, stranded copper of its area [ohm]. */
const ohmOf = (size: string): number => (copper.rho_20.value * copper.lay.value) / areaOf(size);

/** The most that one metre of it may have: of metric sizes what class 5 allows, which is more than copper of the area has. */
const mostOf = (size: string): number => {
  const metric = IEC_60228_CLASS_5.rows.find((row) => `${row.size} mm2` === size);
  return metric === undefined ? ohmOf(size) : metric.resistance / 1000;
};

const heat = (celsius: number): number => 1 + copper.alpha_20.value * (celsius - 20);

function wire({ size, insulation, resistance, measured_at }: ShopWire): [string | null, string][] {
  if (resistance === undefined) return [];
  const cold = resistance / heat(measured_at ?? PRESETS.temperature.value);
  const sold = asSold(size, insulation);
  const above = cold / mostOf(sold) - 1;
  const below = 1 - cold / ohmOf(sold);
  if (above > ABOVE)
    return [['resistance', `${share(above)} above what ${size} has: thinner than its size, or no copper`]];
  return below > BELOW
    ? [['resistance', `${share(below)} below copper of ${size}: thicker than its size, or a slip`]]
    : [];
}
const share = (value: number): string => `${Math.round(value * 100)} %`;

/** With more current a fuse takes less time, and it carries its rating. */
function fuse({ rating, curve = [] }: ShopFuse): [string | null, string][] {
  return curve.flatMap(({ current, within }, i): [string | null, string][] => {
    const before = curve[i - 1];
    if (i === 0)
      return current <= rating
        ? [['curve', `its curve starts at ${tidy(current)} A, not above its rating`]]
        : [];
    if (before === undefined) return [];
    if (current <= before.current)
      return [['curve', `its curve turns back: ${tidy(current)} A after ${tidy(before.current)} A`]];
    return within >= before.within
      ? [['curve', `its curve rises: ${tidy(within)} s at ${tidy(current)} A after ${tidy(before.within)} s`]]
      : [];
  });
}

/** Every size between the smallest and the largest wire has its crimp; none lies outside. */
function terminal({ smallest, largest, crimps }: ShopTerminal): [string | null, string][] {
  if (crimps === undefined) return [];
  const found: [string | null, string][] = [];
  const series = seriesOf(crimps[0]?.size ?? '14 AWG');
  const names = SIZES[series].map((name) => `${name} ${series}`);
  const between = names.filter((name) => {
    const area = areaOf(name);
    return (
      area >= areaOf(smallest ?? least(crimps)) * (1 - EDGE) &&
      area <= areaOf(largest ?? most(crimps)) * (1 + EDGE)
    );
  });
  // The odd sizes are seldom there.
  const holes = between.filter((name) => !crimps.some(({ size }) => size === name) && !ODD.includes(name));
  if (holes.length > 0) found.push(['crimps', `no crimp for ${holes.join(', ')} within its range`]);
  for (const { size } of crimps)
    if (
      (smallest !== undefined && areaOf(size) < areaOf(smallest) * (1 - EDGE)) ||
      (largest !== undefined && areaOf(size) > areaOf(largest) * (1 + EDGE))
    )
      found.push(['crimps', `a crimp for ${size}, beyond its range`]);
  const heights = crimps
    .filter(({ height }) => height !== undefined)
    .toSorted((a, b) => areaOf(a.size) - areaOf(b.size));
  heights.forEach(({ size, height }, i) => {
    const before = heights[i - 1];
    if (before?.height !== undefined && (height as number) <= before.height)
      found.push(['crimps', `the crimp of ${size} is not higher than that of ${before.size}`]);
  });
  return found;
}
type Crimps = NonNullable<ShopTerminal['crimps']>;
const sorted = (crimps: Crimps): string[] =>
  crimps.map(({ size }) => size).sort((a, b) => areaOf(a) - areaOf(b));
const least = (crimps: Crimps): string => sorted(crimps)[0] as string;
const most = (crimps: Crimps): string => sorted(crimps).at(-1) as string;
const ODD = ['3 AWG', '1 AWG'];
/** Rounding only [1]. */
const EDGE = 1e-9;

/** Wire that is listed twice at two prices: the lower one is taken. */
function twice({ wire: wires = [] }: Shop): Doubt[] {
  return wires.flatMap((one, i) => {
    const before = wires
      .slice(0, i)
      .find((other) => other.size === one.size && other.insulation === one.insulation);
    return before?.price !== undefined && one.price !== undefined && before.price.amount !== one.price.amount
      ? [
          {
            path: ['wire', i, 'price'],
            part: `${one.size}, ${one.insulation}`,
            words: 'listed before at another price: the lower one is taken',
          },
        ]
      : [];
  });
}
