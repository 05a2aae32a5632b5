/** What is told of many installs. */
import type { At } from '../basis/quantity.ts';
import type { Design } from '../design/design.ts';
import { RULES, type Rule, type RuleId } from '../findings/rules.ts';
import { WORDS } from '../findings/words.ts';
import { QUANTITIES, type QuantityName } from '../model/model.ts';
import { labelOf } from '../views/print.ts';

interface Common {
  /** Key in JSON, without the unit. */
  readonly key: string;
  readonly label: string;
  /** Unit of the model. */
  readonly unit: string;
  /** The quantity as which it is read. */
  readonly as: QuantityName;
}

/** The largest value of a quantity over some members, or the least. */
type Valued = Common & { readonly name: QuantityName; readonly at: readonly At[]; readonly least?: true };

/** A value, or the margin of a rule where it is least. */
export type Figure = Valued | (Common & { readonly rule: RuleId });

export function figuresOf(design: Design): Figure[] {
  const points = design.points.map((_, point) => ({ point }));
  const left = design.coils.flatMap((_, coil) => points.map(({ point }) => ({ coil, point })));
  const fused = design.wires.flatMap(({ run }, wire) => (design.runs[run]?.fuse ? [{ wire }] : []));
  const relayed = design.runs.some(({ relay }) => relay !== null);
  const known = design.coil.inductance !== null || design.coil.test_point !== null;
  return [
    of('drop', 'worst_drop', [{}]),
    ...(known
      ? [{ ...of('energy_kept', 'energy_kept', left, 'Energy kept, weakest coil'), least: true as const }]
      : []),
    of('peak', 'point_peak', points, 'Peak current, strongest coil'),
    ...(fused.length > 0 ? [of('fuse_load', 'fuse_load', fused, 'Load of the fuse')] : []),
    ...(relayed ? [margin('relay_pull_in'), margin('relay_holds')] : []),
    margin('stuck_driver'),
  ];
}

function of(key: string, name: QuantityName, at: readonly At[], label = labelOf(name)): Valued {
  return { key, label, unit: QUANTITIES[name].unit, as: name, name, at };
}

/** Distance to the limit of a rule as a share of it, of the subject that is nearest to it. */
const margin = (rule: RuleId): Figure => ({
  key: `${rule}_margin`,
  label: `Margin: ${WORDS[rule].title}`,
  unit: '1',
  as: 'energy_kept',
  rule,
});

/** Whether a rule is advice only: it changes no verdict. */
export const isAdvice = (rule: RuleId): boolean => (RULES[rule] as Rule).advice === true;
