/** Values and rules of the author’s own, as the command evaluates them: by the spreadsheet engine, which this worker alone has. */
import { keyText } from '../../design/problems.ts';
import { readTree } from '../../design/tree.ts';
import { ownOf } from '../../own/evaluate.ts';
import { run, withOwn } from '../../run.ts';
import { toJson } from '../../writers/json.ts';
import { ownText } from '../../writers/report.ts';
import type { Given, OwnJudged } from '../protocol.ts';
import { designOf } from './main.ts';

export function ownJudged(given: Given): OwnJudged {
  const { text, file } = given;
  const alone = run(designOf(given));
  const { found, wrong } = ownOf(alone.evaluation);
  const whole = withOwn(alone, found);
  const tree = wrong.length === 0 ? null : readTree(text, file);
  return {
    found,
    json: toJson(whole).own,
    verdict: whole.verdict,
    rows: found.map((one) => ({ verdict: one.verdict, text: ownText(one) })),
    problems: wrong.flatMap(({ key, found, taken }) =>
      tree === null ? [] : [{ file, ...tree.place(key), key: keyText(key), found, taken }],
    ),
  };
}
