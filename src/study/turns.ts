/** From where on another size is due, or the verdict turns. */
import type { Row, Study } from './study.ts';

/** Along one input: from this value on something is another word than before. */
export interface Turn {
  /** Value of the other input, where there is one. */
  readonly beside: string | null;
  readonly what: string;
  readonly value: string;
  readonly before: string;
  readonly after: string;
}

const VERDICTS: Readonly<Record<Row['verdict'], string>> = {
  pass: 'passes',
  fail: 'fails',
  unknown: 'is not known',
  refused: 'cannot be',
};

/** What turns when the verdict does. */
export const VERDICT = 'Verdict';

/** Turns of every shown word and of the verdict, along the first input, for each value of the second. */
export function turnsOf({ vary, shown, rows }: Study): Turn[] {
  const second = vary[1]?.values ?? [null];
  return second.flatMap((beside, k) => {
    const own = rows.filter((_, i) => i % second.length === k);
    const words = [
      {
        what: VERDICT,
        of: (row: Row) => VERDICTS[row.verdict] + (row.why[0] === undefined ? '' : `: ${row.why[0]}`),
      },
      ...shown.flatMap(({ label, unit, steps }, i) =>
        steps
          ? [
              {
                what: label,
                of: (row: Row) => (row.verdict === 'refused' ? null : `${row.texts[i] ?? ''} ${unit}`.trim()),
              },
            ]
          : [],
      ),
    ];
    return words.flatMap(({ what, of }) =>
      own.slice(1).flatMap((row, i): Turn[] => {
        const [before, after] = [of(own[i] as Row), of(row)];
        if (before === null || after === null || before === after) return [];
        return [{ beside, what, value: row.values[0] as string, before, after }];
      }),
    );
  });
}
