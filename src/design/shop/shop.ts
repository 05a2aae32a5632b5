/** A shop's own file as the rest of the program takes it. Values are in the units of `Design`; undefined is not stated. */
import type { FuseType, Sense, Suppression } from '../kinds.ts';

/** Of one piece or, where a part is sold by length, of one metre; in the one currency of the shop. */
export interface Price {
  readonly amount: number;
  /** Three capital letters. */
  readonly currency: string;
}

/** What every part has. */
interface Part {
  readonly name: string;
  /** Number under which the shop orders it. */
  readonly stock?: string | undefined;
  readonly price?: Price | undefined;
}

export interface ShopCoil extends Part {
  readonly connector?: string | undefined;
  /** Largest wire that its connector takes, `14 AWG`. */
  readonly largest?: string | undefined;
  /** Where its values come from. */
  readonly from?: string | undefined;
  /** [ohm] at 20 °C, [H], [V, s, A, degC], [A] */
  readonly resistance?: number | undefined;
  readonly inductance?: number | undefined;
  readonly test_point?:
    | { supply: number; dwell: number; peak: number; temperature?: number | undefined }
    | undefined;
  readonly peak?: number | undefined;
  /** [V], [A] */
  readonly driver_drop?: number | undefined;
  readonly current_limit?: number | undefined;
}

export interface ShopWire {
  readonly size: string;
  readonly insulation: string;
  readonly colours?: readonly string[] | undefined;
  /** Measured [ohm/m], and at which temperature [degC]. */
  readonly resistance?: number | undefined;
  readonly measured_at?: number | undefined;
  readonly from?: string | undefined;
  readonly stock?: string | undefined;
  /** By the metre. */
  readonly price?: Price | undefined;
}

export interface ShopFuse extends Part {
  readonly type: FuseType;
  /** [A] */
  readonly rating: number;
  /** Longest clearing times [A, s]. */
  readonly curve?: readonly { current: number; within: number }[] | undefined;
  /** [A²s] */
  readonly melting?: number | undefined;
  /** [V] */
  readonly voltage?: number | undefined;
  readonly from?: string | undefined;
}

export interface ShopHolder extends Part {
  readonly type?: FuseType | undefined;
  /** [A] */
  readonly rating?: number | undefined;
  readonly largest?: string | undefined;
}

export interface ShopRelay extends Part {
  /** [A] */
  readonly rating: number;
  /** [degC] */
  readonly rated_at?: number | undefined;
  /** [ohm], [V] */
  readonly coil?: number | undefined;
  readonly pull_in?: number | undefined;
  readonly drop_out?: number | undefined;
  readonly coil_max?: number | undefined;
  readonly suppression?: Suppression | undefined;
  readonly from?: string | undefined;
}

/** Height of a crimp [mm] and the force that it must withstand [N]. */
export interface Crimp {
  readonly size: string;
  readonly height?: number | undefined;
  readonly pull?: number | undefined;
}

/** What a terminal or a splice takes: sizes as `14 AWG`, bared length [m]. */
interface Crimped extends Part {
  readonly smallest?: string | undefined;
  readonly largest?: string | undefined;
  readonly strip?: number | undefined;
}

export interface ShopTerminal extends Crimped {
  readonly crimps?: readonly Crimp[] | undefined;
  /** Width of the tab that it takes [mm]. */
  readonly tab?: number | undefined;
  readonly stud?: string | undefined;
  readonly tool?: string | undefined;
}

export interface ShopSleeve extends Part {
  /** [mm]; its price is by the metre. */
  readonly inside?: number | undefined;
}

export interface Shop {
  /** Name of its file. */
  readonly file: string;
  readonly currency: string | null;
  /** In a copy for a workbook: those whose wire it holds. */
  readonly insulations?: readonly string[] | undefined;
  /** Who makes the kit. */
  readonly shop?:
    | {
        readonly name: string;
        readonly address?: readonly string[] | undefined;
        readonly contact?: string | undefined;
        /** A file beside the shop's. */
        readonly logo?: string | undefined;
        readonly revision?: string | undefined;
        readonly warranty?: string | undefined;
      }
    | undefined;
  readonly coils?: readonly ShopCoil[] | undefined;
  readonly wire?: readonly ShopWire[] | undefined;
  readonly fuses?: readonly ShopFuse[] | undefined;
  readonly holders?: readonly ShopHolder[] | undefined;
  readonly relays?: readonly ShopRelay[] | undefined;
  readonly terminals?: readonly ShopTerminal[] | undefined;
  readonly splices?: readonly Crimped[] | undefined;
  readonly sleeves?: readonly ShopSleeve[] | undefined;
  readonly labels?: readonly Part[] | undefined;
  readonly tools?:
    | readonly { name: string; of?: string | undefined; calibrated?: string | undefined }[]
    | undefined;
  readonly instruments?:
    | readonly { name: string; kind: Sense; accuracy: string; calibrated?: string | undefined }[]
    | undefined;
}

/** A size of wire that binds, and the part that binds it. */
export interface Bound {
  readonly size: string;
  readonly by: string;
}

/** Kinds of parts that a design may use, by the key under which they stand. */
export const KINDS = [
  'coils',
  'fuses',
  'holders',
  'relays',
  'terminals',
  'splices',
  'sleeves',
  'labels',
  'instruments',
] as const;
export type Kind = (typeof KINDS)[number];

/** A part of the shop's file that a design uses. */
export interface Used {
  /** Key in the design: `coil`, `feed[0].fuse`, `kit.terminals.main.from`. */
  readonly path: string;
  readonly kind: Kind;
  readonly name: string;
  /** Where the shop says that its values come from. */
  readonly from: string | null;
  /** Keys whose values are the shop's. */
  readonly keys: readonly string[];
  /** All keys that stand beside `use`. */
  readonly stated: readonly string[];
  /** Of these, and of those that no longer hold beside them, what the part has. */
  readonly beside: readonly string[];
}

const OF_ITS_RATING = ['curve', 'melting', 'rerating'];

/** Keys that say what no longer holds of the shop's part when a design states another value beside `use`. */
export const DROPS: Readonly<Partial<Record<Kind, Readonly<Record<string, readonly string[]>>>>> = {
  coils: {
    inductance: ['test_point', 'peak'],
    test_point: ['inductance', 'peak'],
    peak: ['inductance', 'test_point'],
  },
  // Another rating is another part: nothing that the maker says of its curve holds.
  fuses: { type: OF_ITS_RATING, rating: OF_ITS_RATING },
  relays: { rating: ['rated_at', 'derating'] },
};

/** What one of a kind is called. */
export const PART: Readonly<Record<Kind, string>> = {
  coils: 'coil',
  fuses: 'fuse',
  holders: 'holder',
  relays: 'relay',
  terminals: 'terminal',
  splices: 'splice',
  sleeves: 'sleeve',
  labels: 'label',
  instruments: 'instrument',
};

/** `coil “race twenty”, from the maker’s sheet of 2031` */
export const partOf = ({ kind, name, from }: Pick<Used, 'kind' | 'name' | 'from'>): string =>
  `${PART[kind]} “${name}”${from === null ? '' : `, from ${from}`}`;
