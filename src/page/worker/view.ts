/** What the page shows of a result. */
import { printCitation } from '../../basis/sources.ts';
import type { Finding } from '../../findings/finding.ts';
import type { Result } from '../../findings/result.ts';
import { RULES, type Sense } from '../../findings/rules.ts';
import { printQuantity, sentence, WORDS } from '../../findings/words.ts';
import { toJson } from '../../writers/json.ts';
import type { FindingText, View } from '../protocol.ts';
import type { ResultJson } from '../result-json.ts';

const SIGNS: Readonly<Record<Sense, string>> = { 'at most': '≤', 'at least': '≥', below: '<', above: '>' };

export const viewOf = (result: Result): View => ({
  design: result.evaluation.design,
  json: toJson(result) as unknown as ResultJson,
  findings: result.findings.map((f) => findingText(f, result)),
});

function findingText(f: Finding, { evaluation }: Result): FindingText {
  const { value, limit } = RULES[f.rule];
  const counted = f.margin === null;
  return {
    rule: f.rule,
    title: WORDS[f.rule].title,
    subject: f.subject === 'feed' ? '' : f.subject,
    verdict: f.verdict,
    value: counted ? '' : printQuantity(value, f.value),
    limit: counted ? '' : `${SIGNS[f.sense]} ${printQuantity(limit, f.limit, value)}`,
    margin: f.margin,
    marginal: f.marginal,
    sentence: sentence(f, evaluation),
    source: printCitation(f.source),
  };
}
