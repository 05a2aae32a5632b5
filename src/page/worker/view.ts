/** What the page shows of a result. */

import { UNITS, type Units } from '../../basis/shown.ts';
import { printCitation } from '../../basis/sources.ts';
import type { Finding } from '../../findings/finding.ts';
import type { Result } from '../../findings/result.ts';
import { SIGNS } from '../../findings/rule.ts';
import { RULES } from '../../findings/rules.ts';
import { sentence, WORDS } from '../../findings/words.ts';
import { bought } from '../../views/buy.ts';
import { printQuantity, printWritten } from '../../views/print.ts';
import { coilTable, feedTable, loadTable, pointTable, wireTable } from '../../views/table.ts';
import { toJson } from '../../writers/json.ts';
import type { FindingText, Shown, View } from '../protocol.ts';
import { budgetOf, partsOf } from './feed.ts';

export const viewOf = (result: Result, systems: readonly Units[] = UNITS): View => ({
  design: result.evaluation.design,
  json: toJson(result),
  shown: Object.fromEntries(systems.map((units) => [units, shownOf(result, units)])),
});

/** Everything that is read, in one system of units. */
function shownOf(result: Result, units: Units): Shown {
  const { design } = result.evaluation;
  const e = { ...result.evaluation, design: { ...design, units } };
  return {
    feed: feedTable(e),
    bought: bought(e),
    tables: { coil: coilTable(e), wire: wireTable(e), load: loadTable(e), point: pointTable(e) },
    parts: partsOf(e),
    budget: budgetOf(e),
    findings: result.findings.map((f) => findingText(f, { ...result, evaluation: e })),
    assumed: design.assumed.map(({ path, value, why }) => ({ path, value: printWritten(value, units), why })),
  };
}

function findingText(f: Finding, { evaluation }: Result): FindingText {
  const { value, limit } = RULES[f.rule];
  const { units } = evaluation.design;
  const counted = f.margin === null;
  return {
    rule: f.rule,
    title: WORDS[f.rule].title,
    subject: f.subject === 'feed' ? '' : f.subject,
    verdict: f.verdict,
    value: counted ? '' : printQuantity(value, f.value, units),
    limit: counted ? '' : `${SIGNS[f.sense]} ${printQuantity(limit, f.limit, units, value)}`,
    origins: { value: { quantity: value, at: f.at }, limit: { quantity: limit, at: f.at } },
    margin: f.margin,
    marginal: f.marginal,
    sentence: sentence(f, evaluation),
    source: printCitation(f.source),
  };
}
