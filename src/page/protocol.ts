/**
 * What page and worker say to each other. All of it passes as a structured clone: plain data, infinities included.
 *
 *   page ── Ask ──► worker: the same pipeline as on the command line
 *        ◄─ Reply ─
 */
import type { At } from '../basis/quantity.ts';
import type { Units } from '../basis/shown.ts';
import type { Design } from '../design/design.ts';
import type { Problem } from '../design/problems.ts';
import type { ShopText } from '../design/shop/beside.ts';
import type { Told } from '../explain/tree.ts';
import type { Overall, Verdict } from '../findings/finding.ts';
import type { RuleId } from '../findings/rules.ts';
import type { QuantityName } from '../model/model.ts';
import type { OwnFound } from '../own/found.ts';
import type { Picture } from '../pictures/chart.ts';
import type { SpeedLines } from '../pictures/speed-lines.ts';
import type { Bought } from '../views/buy.ts';
import type { Table } from '../views/table.ts';
import type { ResultJson } from '../writers/json.ts';

/** A number whose origin can be asked for; members that the quantity does not go over say nothing. */
export interface Figure {
  readonly quantity: QuantityName;
  readonly at: At;
}

/** A finding as it is read: numbers with their units are printed already. */
export interface FindingText {
  readonly rule: RuleId;
  readonly title: string;
  readonly subject: string;
  readonly verdict: Verdict;
  /** `13.8 A` and `≤ 15 A`; empty where a count says nothing. */
  readonly value: string;
  readonly limit: string;
  /** What stands behind the two. */
  readonly origins: { readonly value: Figure; readonly limit: Figure };
  /** Share of the limit; null when that means nothing. */
  readonly margin: number | null;
  readonly marginal: boolean;
  readonly sentence: string;
  readonly source: string;
}

/** By what the picture of the feed tells its parts apart. */
export const MODES = ['load', 'drop', 'temperature', 'energy'] as const;
export type Mode = (typeof MODES)[number];

export interface Share {
  /** Of the limit; null where there is none. */
  readonly share: number | null;
  /** `9.71 A`, and `33.1 A` or nothing. */
  readonly text: string;
  readonly limit: string;
  readonly of: Figure;
}

/** A part of the picture of the feed. */
export interface PartOf {
  readonly kind: 'wire' | 'fuse' | 'relay' | 'coil';
  /** Of the conductor, or of the coil. */
  readonly id: string;
  /** `12 AWG`, `20 A` */
  readonly name: string;
  /** Key of its form. */
  readonly key: string;
  readonly shares: Partial<Readonly<Record<Mode, Share | null>>>;
}

/** The drop on the worst path [V]; runs in the order of the current, each with the shares of what makes it. */
export interface Budget {
  readonly coil: string;
  readonly point: string;
  readonly volts: number;
  readonly limit: number;
  readonly text: string;
  readonly limitText: string;
  readonly runs: readonly {
    readonly run: string;
    readonly side: 'feed' | 'return';
    readonly volts: number;
    readonly text: string;
    readonly share: string;
    readonly of: Figure;
    readonly parts: readonly {
      readonly what: 'conductor' | 'joints' | 'fuse' | 'relay';
      readonly share: number;
    }[];
  }[];
}

export interface FigureText {
  readonly label: string;
  readonly text: string;
  readonly of: Figure;
}

/** What is read of one part. */
export interface Card {
  readonly title: string;
  readonly figures: readonly FigureText[];
}

/** All that is read of a result, printed in one system of units. */
export interface Shown {
  readonly feed: Table;
  readonly bought: readonly Bought[];
  readonly tables: Readonly<Record<'coil' | 'wire' | 'load' | 'point', Table>>;
  readonly parts: readonly PartOf[];
  readonly budget: Budget;
  readonly findings: readonly FindingText[];
  readonly assumed: readonly { readonly path: string; readonly value: string; readonly why: string }[];
}

/** A design that was evaluated and judged. */
export interface View {
  /** But for what is made when it is asked for. */
  readonly design: Omit<Design, 'text'>;
  /** What `coilfeed size --json` prints. */
  readonly json: ResultJson;
  /** What is read, in the system of units that was asked for; of a kept one in all. */
  readonly shown: Readonly<Partial<Record<Units, Shown>>>;
}

/** A place whose value cannot be read, and the last good one that was taken for it; empty where it was left out. */
export interface Held {
  readonly key: string;
  readonly value: string;
}

/**
 * The answer to a text: of the text as it is, or, where it has problems, of the last values that could be read at their
 * places; without a view where nothing can stand in for them.
 */
export interface Answer {
  readonly problems: readonly Problem[];
  readonly held: readonly Held[];
  readonly answered: { readonly view: View; readonly text: string } | null;
}

/** What the page has open: the text of a design, the name of its file, for messages and downloads, and the shop's file beside it. */
export interface Given {
  readonly text: string;
  readonly file: string;
  readonly shop: ShopText | null;
}

/** Values and rules of the author’s own, evaluated and judged together with the findings. */
export interface OwnJudged {
  readonly found: readonly OwnFound[];
  /** As `coilfeed size --json` prints them. */
  readonly json: ResultJson['own'];
  /** On the whole. */
  readonly verdict: Overall;
  readonly rows: readonly { readonly verdict: Verdict | null; readonly text: string }[];
  /** What cannot be taken; then nothing was evaluated. */
  readonly problems: readonly Problem[];
}

/** What the author added, where it counts in a verdict. */
export interface Owned {
  readonly own: readonly OwnFound[];
}

/** A line of the test card, with the reading that a person would enter there. */
export interface CardLine {
  readonly where: string;
  readonly point: string;
  readonly probes: string;
  readonly instrument: string;
  readonly low: string;
  readonly high: string;
  readonly unit: string;
  /** As the design takes it but for the value: null where it needs more than a number. */
  readonly entry: Readonly<Record<string, string>> | null;
  /** Key of the value, `meter`, and the unit that a bare number has. */
  readonly key: string;
  readonly takes: string;
}

/** An install as found, in words. */
export interface CheckText {
  readonly verdict: Overall;
  readonly line: string;
  /** Parts that nobody knows, the most decisive first: what hangs on each, and where to look. */
  readonly unknown: readonly string[];
  readonly mend: readonly {
    readonly title: string;
    readonly says: string;
    readonly detail: string;
    readonly cost: string;
  }[];
  /** What may be wrong, the likeliest first, each with its share; and that of nothing being wrong. */
  readonly causes: readonly { readonly text: string; readonly share: string }[];
  readonly sound: string;
  readonly next: string;
  readonly unseen: readonly string[];
  readonly readings: readonly { readonly where: string; readonly stands: string; readonly text: string }[];
  /** Why nothing was weighed; empty when it was. */
  readonly why: string;
}

/** The feed beside the one that it replaces. */
export interface Against {
  readonly sides: readonly { readonly name: string; readonly title: string; readonly verdict: Overall }[];
  readonly gain: string;
  readonly tables: readonly {
    readonly title: string;
    readonly heads: readonly string[];
    readonly rows: readonly (readonly string[])[];
  }[];
  /** Rules that do not pass, by which of the two it is so with. */
  readonly rules: readonly { readonly title: string; readonly names: readonly string[] }[];
}

/** How many kits are made and their serial numbers, as typed; empty where nothing is said. */
export interface Lot {
  readonly kits: string;
  readonly serials: string;
}

/** The papers of a kit. */
export interface Papers {
  readonly released: boolean;
  readonly words: string;
  readonly files: readonly { readonly name: string; readonly what: string; readonly text: string }[];
  /** All of them in one archive, but for the shop's prices. */
  readonly zip: Uint8Array;
}

/** Why there is no such picture, in words. */
export interface Nothing {
  readonly why: string;
}

/** JSON Schema, as far as forms need it. */
export interface Schema {
  readonly type?: string;
  readonly description?: string;
  readonly default?: string | number;
  readonly const?: number;
  readonly enum?: readonly (string | number)[];
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly required?: readonly string[];
  readonly items?: Schema;
  readonly additionalProperties?: Schema | boolean;
  readonly anyOf?: readonly Schema[];
  readonly minItems?: number;
  readonly maxItems?: number;
}

/** What a field of the design is called, and in which unit a bare number is taken; by its place, `run.fuse.rating`. */
export interface FieldInfo {
  readonly label: string;
  /** As it is written in a design, `mohm`; empty for words and counts. */
  readonly unit: string;
  /** The same where a person works in US customary units. */
  readonly us: string;
  readonly help: string;
}

/** What forms are made from. */
export interface Form {
  readonly schema: Schema;
  readonly fields: Readonly<Record<string, FieldInfo>>;
  /** What is usual, where that is a list: sizes, ratings; anything else can be written, too. */
  readonly choices: Readonly<Record<string, readonly string[]>>;
  /** Keys that a reading of each kind has. */
  readonly readings: Readonly<Record<string, readonly string[]>>;
}

/** What can be asked, by kind; pictures are of the design that was answered last. */
export interface Calls {
  design: { ask: Given & { good: string | null; units: Units | 'design' }; reply: Answer };
  /** Another design, answered beside the one at hand; null where it cannot be read. */
  kept: { ask: Given; reply: View | null };
  speed: { ask: null; reply: SpeedLines | Nothing };
  trace: { ask: { speed: number }; reply: Picture | Nothing };
  drop: { ask: null; reply: Picture };
  curves: { ask: null; reply: readonly Picture[] | Nothing };
  /** What to measure, and what is acceptable, on the design that was answered last. */
  testcard: { ask: null; reply: readonly CardLine[] };
  check: { ask: Given & Owned; reply: CheckText };
  /** Beside its `original`; null where it has none. */
  against: { ask: Given & Owned; reply: Against | null };
  papers: { ask: Given & Owned & Lot & { readonly logo: string | null }; reply: Papers | Nothing };
  /** The workbook of a kit. */
  kitbook: { ask: Given & Lot; reply: Uint8Array };
  /** What was tried and mends the design, in each system of units. */
  remedies: { ask: Given; reply: Readonly<Record<Units, readonly string[]>> };
  /** What is read of a part of the feed; null when there is none any more. */
  card: { ask: Pick<PartOf, 'kind' | 'id'> & { readonly units: Units }; reply: Card | null };
  /** Where a number of that design comes from. */
  explain: { ask: Figure & { readonly units: Units }; reply: Told | Nothing };
  workbook: { ask: Given; reply: Uint8Array };
  /** What the author added; by the spreadsheet engine. */
  own: { ask: Given; reply: OwnJudged };
  diagram: { ask: null; reply: string };
  saved: {
    ask: { bytes: Uint8Array; file: string };
    reply: { ok: true; text: string } | { ok: false; problems: readonly Problem[] };
  };
}
export type Kind = keyof Calls;
/** What takes long, and reads or writes workbooks. */
export type LateKind = 'check' | 'against' | 'remedies' | 'papers' | 'kitbook' | 'workbook' | 'saved' | 'own';

export type Ask = { [K in Kind]: { id: number; kind: K; ask: Calls[K]['ask'] } }[Kind];

/** `failed` says what the tool could not do, and is its own fault; `stage` what long work is at, before its reply. */
export type Reply =
  | { id: number; reply: unknown }
  | { id: number; failed: string }
  | { id: number; stage: string };

/** Tells what long work is at: `2 of 4: the cells are laid out`. */
export type Tell = (stage: string) => void;
