/** The keys of the JSON result that the page shows; docs/result.md describes them all. */
import type { Overall } from '../findings/finding.ts';

type Known = number | null;

export interface PointJson {
  readonly name: string;
  readonly rpm: number;
  readonly supply_V: number;
  readonly dwell_s: Known;
  readonly clipped: boolean;
  readonly duty: Known;
  readonly peak_A: Known;
  readonly energy_J: Known;
}

export interface RunPointJson {
  readonly name: string;
  readonly average_A: Known;
  readonly rms_A: Known;
  readonly peak_A: Known;
  readonly drop_average_V: Known;
  readonly drop_peak_V: Known;
}

export interface RunJson {
  readonly id: string;
  readonly run: string;
  readonly side: 'feed' | 'return';
  readonly coils: readonly string[];
  readonly gauge: string | null;
  readonly gauge_chosen: boolean;
  readonly area_mm2: Known;
  readonly length_m: number;
  readonly resistance_ohm: Known;
  readonly ampacity_A: Known;
  readonly conductor_C: Known;
  readonly worst_point: string | null;
  readonly points: readonly RunPointJson[];
}

export interface PartJson {
  readonly run: string;
  readonly rating_A: Known;
  readonly rating_chosen: boolean;
  readonly load: Known;
}

export interface CoilJson {
  readonly id: string;
  readonly points: readonly {
    readonly name: string;
    readonly supply_V: Known;
    readonly peak_A: Known;
    readonly energy_J: Known;
    readonly energy_kept: Known;
    readonly dwell_to_win_back_s: Known;
  }[];
}

export interface ResultJson {
  readonly title: string;
  readonly verdict: Overall;
  readonly coil: { readonly count: number; readonly ids: readonly string[]; readonly bound: boolean };
  readonly points: readonly PointJson[];
  readonly runs: readonly RunJson[];
  readonly fuses: readonly (PartJson & { readonly type: string })[];
  readonly relays: readonly PartJson[];
  readonly coils: readonly CoilJson[];
  readonly sweep: readonly {
    readonly rpm: number;
    readonly main_average_A: Known;
    readonly main_rms_A: Known;
    readonly main_peak_A: Known;
    readonly energy_J: Known;
  }[];
  readonly totals: {
    readonly copper_kg: Known;
    readonly drop_V: Known;
    readonly worst_coil: string | null;
    readonly worst_point: string | null;
    readonly average_A: Known;
    readonly alternator_share: Known;
  };
  readonly assumed: readonly { readonly path: string; readonly value: string; readonly why: string }[];
}
