/** The tree of a value as JSON. */
import type { Told } from '../explain/tree.ts';

export const EXPLAIN_FORMAT = 'coilfeed-explain/1';

/** A value, what it is made from, and so on down to the design. Values in the unit that stands beside them. */
export interface ToldJson {
  readonly quantity: string;
  readonly label: string;
  readonly symbol: string;
  /** Names of the members that it is for; empty for what exists once. */
  readonly of: string;
  readonly value: number | string | null;
  readonly unit: string;
  /** As a person reads it. */
  readonly text: string;
  readonly kind: string;
  readonly source: string;
  readonly note: string;
  /** The formula as it was worked out, over names of quantities; empty where there is none. */
  readonly formula: string;
  /** Why what it is made from does not stand here: `told above`, `deeper`; null where it does. */
  readonly cut: string | null;
  readonly parts: readonly {
    readonly quantity: string;
    /** `enters`, `decides` which branch is taken, or `picks` a row. */
    readonly role: string;
    readonly count: number;
    /** Least to largest of those that are not told one by one; empty where all are. */
    readonly span: string;
    readonly values: readonly ToldJson[];
  }[];
}

export const explainJson = (told: Told) => ({ format: EXPLAIN_FORMAT, ...toldJson(told) });

function toldJson({
  id,
  label,
  symbol,
  of,
  value,
  unit,
  text,
  kind,
  source,
  note,
  formula,
  cut,
  parts,
}: Told): ToldJson {
  return {
    quantity: id,
    label,
    symbol,
    of,
    value,
    unit,
    text,
    kind,
    source,
    note,
    formula,
    cut,
    parts: parts.map(({ id: quantity, role, count, span, told }) => ({
      quantity,
      role,
      count,
      span,
      values: told.map(toldJson),
    })),
  };
}
