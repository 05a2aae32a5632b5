/**
 * What of a shop's file goes into a workbook: who the shop is, the parts that the design uses, and those of the shelf that
 * may be chosen in their place. The rest of the shelf is nobody's business who is given the workbook.
 */
import type { Design, Run } from '../design.ts';
import { SAE_TYPES } from '../names.ts';
import { readDesign } from '../read.ts';
import { readTree } from '../tree.ts';
import { inlined } from './inlined.ts';
import { KINDS, type Shop } from './shop.ts';

type Plain = Record<string, unknown>;
type Parts = readonly { readonly name?: string; readonly [key: string]: unknown }[];

/** Of a list that says what may be chosen an empty one would say anything: one part of it stays. */
const orFirst = <T>(chosen: readonly T[], all: readonly T[]): readonly T[] =>
  chosen.length > 0 ? chosen : all.slice(0, 1);

/** The parts that stay, as indices into the lists of the shop's file. */
function kept(shop: Shop, { used, runs }: Pick<Design, 'used' | 'runs'>): Map<string, readonly number[]> {
  const found = new Map<string, readonly number[]>();
  for (const kind of KINDS) {
    const names = used.flatMap((one) => (one.kind === kind ? [one.name] : []));
    // The connector of a coil bounds the wire at it.
    const connector = shop.coils?.find(({ name }) => name === names[0])?.largest;
    const own = (shop[kind] ?? []).flatMap((part, i) =>
      mayBe(part) || names.includes(part.name) ? [i] : [],
    );
    const all = [...(shop[kind] ?? []).keys()];
    found.set(kind, kind === 'fuses' || kind === 'relays' ? orFirst(own, all) : own);
    function mayBe(part: object): boolean {
      if (kind === 'relays') return names.length > 0 || runs.some(({ relay }) => relay?.rating === 'auto');
      if (kind === 'coils') return names.length > 0 && (part as { largest?: string }).largest === connector;
      return kind === 'fuses' && runs.some(({ fuse }) => fuse?.type === (part as { type?: string }).type);
    }
  }
  const tools = (shop.terminals ?? []).flatMap(({ tool }, i) =>
    found.get('terminals')?.includes(i) && tool !== undefined ? [tool] : [],
  );
  found.set(
    'tools',
    (shop.tools ?? []).flatMap(({ name }, i) => (tools.includes(name) ? [i] : [])),
  );
  // The first that is not sold by SAE number gives a design its series.
  const first = (shop.wire ?? []).findIndex(({ insulation }) => !SAE_TYPES.includes(insulation));
  const insulations = insulationsOf(runs);
  found.set(
    'wire',
    (shop.wire ?? []).flatMap(({ insulation }, i) =>
      insulations.includes(insulation) || i === first ? [i] : [],
    ),
  );
  return found;
}

const insulationsOf = (runs: readonly Run[]): string[] => [
  ...new Set(runs.map(({ insulation }) => insulation)),
];

const of = ({ text, shop, shelf }: Design): Pick<Design, 'text' | 'shop' | 'shelf'> => ({
  text,
  shop,
  shelf,
});

/** The design with no more of the shop's file than it needs; the same where it has none. */
export function withCopy(design: Design): Design {
  const { shop, used, original } = design;
  if (shop === null) return design;
  const value = readTree(design.text.toString(), '').value as Plain;
  const raw = value.shop as Plain;
  const runs = [...design.runs, ...(original?.runs ?? [])];
  const parts = kept(shop, { used, runs });
  const copy = Object.fromEntries(
    Object.entries(raw).flatMap(([key, list]) => {
      const own = parts.get(key);
      if (own === undefined) return [[key, list]];
      const left = own.map((i) => (list as Parts)[i]);
      return left.length > 0 || key === 'wire' ? [[key, left]] : [];
    }),
  );
  // A copy of a copy is the same: what was left out before stays unknown.
  const insulations = raw.insulations ?? insulationsOf(runs);
  const text = inlined(
    design.text.toString(),
    value,
    shop.wire === undefined ? copy : { ...copy, insulations },
  );
  const read = readDesign(text, '');
  // What is left of parts that were read can be read.
  if (!read.ok) throw new Error(read.problems.map(({ found }) => found).join('\n'));
  return {
    ...design,
    ...of(read.design),
    original: original && { ...original, ...of(read.design) },
  };
}
