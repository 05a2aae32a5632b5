/** Rows by temperature that a part may have of its maker, laid out on as many cells as the longest may take. */
/** [K] Between the last row of the maker and the first of nothing. */
const EDGE = 1;
/** [K] Between the rows beyond it; far out, so that no temperature comes there. */
const FAR = 1000;

interface Row {
  readonly at: number;
  readonly value: number;
}

/** Row `i`: beyond the last one nothing is carried. */
export function heatRow(rows: readonly Row[], i: number): Row {
  const last = rows.at(-1) as Row;
  return rows[i] ?? { at: last.at + EDGE + FAR * (i - rows.length), value: 0 };
}
