/** The result as JSON: SI numbers, the unit as the last part of a key, null for what is not known. */
import { printCitation } from '../basis/sources.ts';
import { unit as readUnit } from '../basis/units.ts';
import type { Design } from '../design/design.ts';
import type { Evaluation } from '../engine/evaluate.ts';
import type { Result } from '../findings/result.ts';
import { sentence } from '../findings/words.ts';
import type { QuantityName } from '../model/model.ts';

export const FORMAT = 'coilfeed-result/1';

type Json = null | number | string | boolean | readonly Json[] | { readonly [key: string]: Json };

/** The result of a run as a plain object. */
export function toJson({ evaluation: e, findings, verdict }: Result): { readonly [key: string]: Json } {
  const { design } = e;
  return {
    format: FORMAT,
    title: design.title,
    verdict,
    coil: {
      count: design.coils.length,
      ids: design.coils.map((c) => c.id),
      resistance_ohm: e.number('coil_ohm_20'),
      inductance_H: e.number('coil_L'),
      bound: e.number('bound') === 1,
    },
    points: design.points.map((p, point) => pointOf(e, p.name, point)),
    runs: design.wires.map((_, wire) => runOf(e, design, wire)),
    fuses: wiresWith(design, 'fuse').map((wire) => fuseOf(e, design, wire)),
    relays: wiresWith(design, 'relay').map((wire) => relayOf(e, design, wire)),
    coils: design.coils.map((c, coil) => ({
      id: c.id,
      points: design.points.map((p, point) => ({
        name: p.name,
        supply_V: e.number('coil_supply', { coil, point }),
        peak_A: e.number('coil_peak', { coil, point }),
        energy_J: e.number('coil_energy', { coil, point }),
        energy_kept: e.number('energy_kept', { coil, point }),
        dwell_to_win_back_s: e.number('coil_winning_dwell', { coil, point }),
      })),
    })),
    sweep: Array.from({ length: design.sweep?.rows ?? 0 }, (_, i) => sweepOf(e, design.points.length + i)),
    totals: {
      copper_kg: e.number('copper_total'),
      drop_V: e.number('worst_drop'),
      worst_coil: design.coils[(e.number('worst_coil') ?? 1) - 1]?.id ?? null,
      worst_point: design.points[(e.number('worst_drop_point') ?? 1) - 1]?.name ?? null,
      average_A: e.number('worst_total'),
      alternator_share: e.number('alternator_share'),
    },
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
    assumed: design.assumed.map(({ path, value, why }) => ({ path, value, why })),
  };
}

/** The model's units are the SI's but for areas and temperatures, which JSON gives in mm² and °C as well. */
const SI_NAMES: Readonly<Record<string, string>> = { 'mm^2': 'mm2', degC: 'C' };
const inSi = (value: number | null, unit: string): number | null =>
  value === null || SI_NAMES[unit] !== undefined ? value : value * (readUnit(unit).factor || 1);

function pointOf(e: Evaluation, name: string, speed: number): Json {
  const n = (q: QuantityName): number | null => e.number(q, { speed });
  return {
    name,
    rpm: n('speed'),
    supply_V: n('supply'),
    dwell_asked_s: n('dwell_asked'),
    dwell_s: n('dwell'),
    clipped: n('clipped') === 1,
    duty: n('duty'),
    firings_per_s: n('firing_rate'),
    peak_A: n('peak'),
    energy_J: n('energy'),
  };
}

function runOf(e: Evaluation, design: Design, wire: number): Json {
  const own = design.wires[wire] as Design['wires'][number];
  const run = own.run;
  const spec = design.runs[run] as Design['runs'][number];
  const points = design.points.map((p, point) => {
    const n = (q: QuantityName): number | null => e.number(q, { wire, point });
    return {
      name: p.name,
      average_A: n('average'),
      rms_A: n('effective'),
      peak_A: n('peak_current'),
      drop_average_V: n('drop_average'),
      drop_peak_V: n('drop_peak'),
    };
  });
  return {
    id: own.id,
    run: spec.name,
    side: spec.side,
    coils: own.coils.map((c) => design.coils[c]?.id ?? ''),
    gauge: e.value('gauge', { run }),
    gauge_chosen: spec.gauge === 'auto',
    area_mm2: e.number('area', { run }),
    length_m: e.number('wire_length', { wire }),
    resistance_ohm: e.number('wire_ohm', { wire }),
    ampacity_A: e.number('ampacity', { run }),
    conductor_C: e.number('wire_T', { wire }),
    worst_point: design.points[(e.number('worst_point', { wire }) ?? 1) - 1]?.name ?? null,
    points,
    fault_max_A: e.number('fault_max', { wire }),
    fault_min_A: e.number('fault_min', { wire }),
    unprotected: spec.side === 'feed' ? windowsOf(e, run, e.number('fault_max', { wire })) : [],
  };
}

/** Windows of the run in which this conductor is not protected, up to its own largest fault current. */
function windowsOf(e: Evaluation, feed: number, most: number | null): Json {
  return e.grid.axes.window.flatMap((_, window) => {
    const from = e.number('window_from', { feed, window });
    const to = e.number('window_to', { feed, window });
    if (from === null || to === null || (most !== null && from >= most)) return [];
    return [{ from_A: from, to_A: most === null ? to : Math.min(to, most) }];
  });
}

/** A time without end is null. */
const finite = (e: Evaluation, time: number | null): number | null =>
  time === null || time >= (e.number('for_ever') ?? 0) ? null : time;

const wiresWith = (design: Design, part: 'fuse' | 'relay'): number[] =>
  design.wires.flatMap((w, i) => (design.runs[w.run]?.[part] ? [i] : []));

function fuseOf(e: Evaluation, design: Design, wire: number): Json {
  const own = design.wires[wire] as Design['wires'][number];
  const run = own.run;
  return {
    run: own.id,
    type: e.value('fuse_type', { run }),
    rating_A: e.number('fuse_rating', { run }),
    rating_chosen: design.runs[run]?.fuse?.rating === 'auto',
    load: e.number('fuse_load', { wire }),
    ambient_C: e.number('fuse_ambient', { run }),
    opens_s: finite(e, e.number('fuse_opens', { wire })),
  };
}

function relayOf(e: Evaluation, design: Design, wire: number): Json {
  const own = design.wires[wire] as Design['wires'][number];
  const run = own.run;
  return {
    run: own.id,
    rating_A: e.number('relay_rating', { run }),
    rating_chosen: design.runs[run]?.relay?.rating === 'auto',
    load: e.number('relay_load', { wire }),
    pull_in_V: e.number('relay_pull_in', { run }),
    supply_cranking_V: e.number('cranking_supply'),
    coil_cranking_V: e.number('relay_supply', { run }),
    coil_closing_V: e.number('relay_close_supply', { run }),
    drop_out_V: e.number('relay_drop_out', { run }),
    coil_lowest_V: e.number('relay_hold_supply', { run }),
    coil_W: e.number('relay_coil_power', { run }),
    allowed_A: e.number('relay_allowed', { run }),
    contact_drop_V: e.number('contact_drop', { wire }),
    contact_W: e.number('contact_heat', { wire }),
    trigger_A: e.number('trigger_current', { run }),
    make_A: e.number('make_current'),
  };
}

function sweepOf(e: Evaluation, speed: number): Json {
  const n = (q: QuantityName): number | null => e.number(q, { speed });
  return {
    rpm: n('speed'),
    dwell_s: n('dwell'),
    duty: n('duty'),
    main_average_A: n('main_average'),
    main_rms_A: n('main_effective'),
    main_peak_A: n('main_peak'),
    energy_J: n('energy'),
  };
}
