/** The known word that a mistyped one most likely stands for. */

/**
 * Steps between two words: a letter put in, left out or changed, or two neighbours swapped, costs one step each
 * (the restricted Damerau–Levenshtein distance).
 */
function distance(a: string, b: string): number {
  const rows: number[][] = [];
  for (let i = 0; i <= a.length; i++) {
    const row: number[] = [i];
    for (let j = 1; j <= b.length; j++) {
      const above = rows[i - 1];
      if (!above) {
        row.push(j);
        continue;
      }
      const changed = (above[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1);
      let least = Math.min(changed, (above[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1);
      const swapped = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      if (swapped) least = Math.min(least, (rows[i - 2]?.[j - 2] ?? 0) + 1);
      row.push(least);
    }
    rows.push(row);
  }
  return rows[a.length]?.[b.length] ?? 0;
}

/**
 * The nearest of `known`, or null when none is near: a third of the letters may differ. The first one wins a tie.
 * Words longer than any key of ours are not compared, so that a hostile key costs nothing.
 */
export function nearest(word: string, known: readonly string[]): string | null {
  if (word.length > 40) return null;
  const allowed = Math.max(1, Math.floor(word.length / 3));
  let best: string | null = null;
  let least = allowed + 1;
  for (const candidate of known) {
    const steps = distance(word.toLowerCase(), candidate.toLowerCase());
    if (steps < least) {
      least = steps;
      best = candidate;
    }
  }
  return best;
}
