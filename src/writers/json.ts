/** The result as JSON: SI numbers, the unit as the last part of a key, null for what is not known. */
import { printCitation } from '../basis/sources.ts';
import { unit as readUnit } from '../basis/units.ts';
import type { Design } from '../design/design.ts';
import type { Evaluation } from '../engine/evaluate.ts';
import type { Result } from '../findings/result.ts';
import { sentence } from '../findings/words.ts';
import { SENSES } from '../own/rows.ts';
import type { Remedy } from '../remedies/remedy.ts';
import type { Ordered } from '../shop/orders.ts';
import { rowOf } from '../views/view.ts';
import { COIL, COIL_ITSELF, FEED, FUSE, LOAD, POINT, RELAY, SWEEP, WIRE } from '../views/views.ts';
import { remediesJson } from './remedies.ts';
import { shopJson } from './shop.ts';

export const FORMAT = 'coilfeed-result/1';

/** The result of a run as a plain object, with the remedies that were tried where it fails. */
export function toJson(
  { evaluation: e, findings, verdict, own = [] }: Result,
  remedies: readonly Remedy[] = [],
  order: Ordered | null = null,
) {
  const { design } = e;
  return {
    format: FORMAT,
    title: design.title,
    verdict,
    coil: {
      count: design.coils.length,
      ids: design.coils.map((c) => c.id),
      ...rowOf(COIL_ITSELF, e, {}),
    },
    points: design.points.map(({ name }, point) => ({ name, ...rowOf(POINT, e, { point, speed: point }) })),
    runs: design.wires.map((_, wire) => runOf(e, design, wire)),
    fuses: wiresWith(design, 'fuse').map((wire) => {
      const { id, run } = design.wires[wire] as Wire;
      const chosen = design.runs[run]?.fuse?.rating === 'auto';
      return { run: id, rating_chosen: chosen, ...rowOf(FUSE, e, { wire, run }) };
    }),
    relays: wiresWith(design, 'relay').map((wire) => {
      const { id, run } = design.wires[wire] as Wire;
      const chosen = design.runs[run]?.relay?.rating === 'auto';
      return { run: id, rating_chosen: chosen, ...rowOf(RELAY, e, { wire, run }) };
    }),
    coils: design.coils.map(({ id }, coil) => ({
      id,
      points: design.points.map(({ name }, point) => ({ name, ...rowOf(COIL, e, { coil, point }) })),
    })),
    sweep: Array.from({ length: design.sweep?.rows ?? 0 }, (_, i) =>
      rowOf(SWEEP, e, { speed: design.points.length + i }),
    ),
    totals: rowOf(FEED, e, {}),
    findings: findings.map((f) => ({
      rule: f.rule,
      subject: f.subject,
      verdict: f.verdict,
      value: inSi(f.value, f.unit),
      limit: inSi(f.limit, f.unit),
      unit: SI_NAMES[f.unit] ?? f.unit,
      margin: f.margin,
      marginal: f.marginal,
      text: sentence(f, e),
      source: printCitation(f.source),
    })),
    own: own.map(({ label, formula, value, unit, sense, limit, verdict, words, error }) => ({
      label,
      formula,
      value,
      unit,
      must_be: sense === null ? null : SENSES[sense],
      limit,
      verdict,
      words,
      error,
    })),
    remedies: remediesJson(remedies),
    assumed: design.assumed.map(({ path, value, why }) => ({ path, value, why })),
    ...(design.shop === null ? {} : { shop: shopJson(design.shop, e, order) }),
  };
}

/** The contract of `--json`; docs/result.md tells it key by key. */
export type ResultJson = ReturnType<typeof toJson>;
export type RunJson = ResultJson['runs'][number];

type Wire = Design['wires'][number];

/** The model's units are the SI's but for areas and temperatures, which JSON gives in mm² and °C as well. */
const SI_NAMES: Readonly<Record<string, string>> = { 'mm^2': 'mm2', degC: 'C' };
const inSi = (value: number | null, unit: string): number | null =>
  value === null || SI_NAMES[unit] !== undefined ? value : value * (readUnit(unit).factor || 1);

function runOf(e: Evaluation, design: Design, wire: number) {
  const { id, run, coils } = design.wires[wire] as Wire;
  const { name, side } = design.runs[run] as Design['runs'][number];
  const row = rowOf(WIRE, e, { wire, run });
  return {
    id,
    run: name,
    side,
    coils: coils.map((c) => design.coils[c]?.id ?? ''),
    ...row,
    points: design.points.map((p, point) => ({ name: p.name, ...rowOf(LOAD, e, { wire, point }) })),
    unprotected: side === 'feed' ? windowsOf(e, run, row.fault_max_A) : [],
  };
}

/** Windows of the run in which this conductor is not protected, up to its own largest fault current. */
function windowsOf(e: Evaluation, feed: number, most: number | null) {
  return e.grid.axes.window.flatMap((_, window) => {
    const from = e.number('window_from', { feed, window });
    const to = e.number('window_to', { feed, window });
    if (from === null || to === null || (most !== null && from >= most)) return [];
    return [{ from_A: from, to_A: most === null ? to : Math.min(to, most) }];
  });
}

const wiresWith = (design: Design, part: 'fuse' | 'relay'): number[] =>
  design.wires.flatMap((w, i) => (design.runs[w.run]?.[part] ? [i] : []));
