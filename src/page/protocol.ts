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
import type { Told } from '../explain/tree.ts';
import type { Verdict } from '../findings/finding.ts';
import type { RuleId } from '../findings/rules.ts';
import type { QuantityName } from '../model/model.ts';
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

/** All that is read of a result, printed in one system of units. */
export interface Shown {
  readonly feed: Table;
  readonly bought: readonly Bought[];
  readonly tables: Readonly<Record<'coil' | 'wire' | 'load' | 'point', Table>>;
  /** Each conductor in a line of words. */
  readonly wires: readonly string[];
  readonly findings: readonly FindingText[];
  readonly assumed: readonly { readonly path: string; readonly value: string; readonly why: string }[];
}

/** A design that was evaluated and judged. */
export interface View {
  readonly design: Design;
  /** What `coilfeed size --json` prints. */
  readonly json: ResultJson;
  /** What is read, in each system of units. */
  readonly shown: Readonly<Record<Units, Shown>>;
}

export type Answer =
  | { readonly ok: true; readonly view: View }
  | { readonly ok: false; readonly problems: readonly Problem[] };

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
}

/** What can be asked, by kind; pictures are of the design that was answered last. */
export interface Calls {
  form: { ask: null; reply: Schema };
  design: { ask: { text: string; file: string }; reply: Answer };
  speed: { ask: null; reply: SpeedLines | Nothing };
  trace: { ask: { speed: number }; reply: Picture | Nothing };
  drop: { ask: null; reply: Picture };
  curves: { ask: null; reply: readonly Picture[] | Nothing };
  /** What was tried and mends the design that was answered last, in each system of units. */
  remedies: { ask: null; reply: Readonly<Record<Units, readonly string[]>> };
  /** Where a number of that design comes from. */
  explain: { ask: Figure & { readonly units: Units }; reply: Told | Nothing };
  workbook: { ask: { text: string }; reply: Uint8Array };
  diagram: { ask: null; reply: string };
  saved: {
    ask: { bytes: Uint8Array; file: string };
    reply: { ok: true; text: string } | { ok: false; problems: readonly Problem[] };
  };
}
export type Kind = keyof Calls;

export type Ask = { [K in Kind]: { id: number; kind: K; ask: Calls[K]['ask'] } }[Kind];

/** `failed` says what the tool could not do, and is its own fault. */
export type Reply = { id: number; reply: unknown } | { id: number; failed: string };
