/** The ways to feed the same coils, side by side. */
import type { Evaluation } from '../engine/evaluate.ts';
import type { Result } from '../findings/result.ts';
import { RULES, type RuleId } from '../findings/rules.ts';
import { WORDS } from '../findings/words.ts';
import type { Alternative } from '../remedies/alternatives.ts';
import { labelOf, say } from '../views/print.ts';
import { quantityOf, rowOf } from '../views/view.ts';
import { BUY, FEED } from '../views/views.ts';
import { columns, fold, WIDTH } from './columns.ts';
import { VERDICT_WORDS } from './verdict.ts';

/** A column for each way, a line for each run and each figure of the whole feed. */
export function alternativesText(found: readonly Alternative[]): string {
  const all = found.map(({ result }) => result.evaluation);
  const line = (label: string, of: (e: Evaluation, i: number) => string): string[] => [label, ...all.map(of)];
  const runs = all[0]?.design.runs ?? [];
  const failing = ({ evaluation: e, findings }: Result): string => {
    if (e.number('solved') !== 1) return `no sizes meet every rule${binding(e)}`;
    const rules = new Set(findings.filter(({ verdict }) => verdict === 'fail').map(({ rule }) => rule));
    return [...rules].map((rule) => WORDS[rule].title).join('; ');
  };
  const fuses = runs.flatMap(({ name }, run) =>
    all.some((e) => e.design.runs[run]?.fuse)
      ? [
          line(`fuse in ${name}`, (e) =>
            e.design.runs[run]?.fuse
              ? `${count(e, run)}${say(e, 'fuse_rating', { run })} ${e.value('fuse_type', { run })}`
              : '–',
          ),
        ]
      : [],
  );
  const rows = [
    line('', (_, i) => VERDICT_WORDS[found[i]?.result.verdict ?? 'unknown']),
    ...runs.map(({ name }, run) => line(name, (e) => say(e, 'gauge', { run }))),
    ...fuses,
    ...FEED.read.map(quantityOf).map((name) => line(labelOf(name), (e) => say(e, name))),
  ];
  const meant = found.flatMap(({ name, what }) =>
    what === '' ? [] : [fold(`${name}: ${what}`, WIDTH, '  ')],
  );
  const why = found.flatMap(({ name, result }) =>
    result.verdict === 'fail' ? [fold(`${name} fails: ${failing(result)}`, WIDTH, '  ')] : [],
  );
  const table = (of: readonly number[]): string =>
    columns(
      ['', ...of.map((i) => found[i]?.name ?? '')].map((title, i) => ({
        title: title.replace(/ (?=each|fuse$|of )/, '\n'),
        align: i === 0 ? 'left' : 'right',
      })),
      rows.map(([label = '', ...cells]) => [label, ...of.map((i) => cells[i] ?? '')]),
    );
  const tables = inWidth(found.length, (of) =>
    Math.max(
      ...table(of)
        .split('\n')
        .map((l) => [...l].length),
    ),
  );
  return [tables.map(table).join('\n\n'), ...meant, ...why].join('\n');
}

/** Columns of one table after the other, as many in each as fit the width. */
function inWidth(count: number, wide: (of: readonly number[]) => number): number[][] {
  const blocks: number[][] = [];
  for (let i = 0; i < count; i++) {
    const block = blocks.at(-1);
    if (block === undefined || wide([...block, i]) > WIDTH) blocks.push([i]);
    else block.push(i);
  }
  return blocks;
}

/** The rules that no size meets, in brackets. */
function binding(e: Evaluation): string {
  const rules = e.design.runs.flatMap((_, run) => {
    const rule = String(e.value('binding', { run }) ?? '');
    return rule in RULES ? [WORDS[rule as RuleId].title] : [];
  });
  return rules.length === 0 ? '' : ` (${[...new Set(rules)].join('; ')})`;
}

/** `8 × ` where a run has several conductors, each with its fuse. */
function count(e: Evaluation, run: number): string {
  const wires = e.number('run_wires', { run }) ?? 1;
  return wires > 1 ? `${wires} × ` : '';
}

/** The same for programs. */
export const alternativesJson = (found: readonly Alternative[]) =>
  found.map(({ name, what, result: { evaluation: e, findings, verdict } }) => ({
    name,
    what,
    verdict,
    failing: findings.filter((f) => f.verdict === 'fail').map(({ rule, subject }) => ({ rule, subject })),
    runs: e.design.runs.map((spec, run) => ({ run: spec.name, ...rowOf(BUY, e, { run }) })),
    totals: rowOf(FEED, e, {}),
  }));
