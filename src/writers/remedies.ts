/** Remedies that were tried, as lines of a report. */
import { shownIn, type Units } from '../basis/shown.ts';
import type { Remedy } from '../remedies/remedy.ts';
import { bullet } from './columns.ts';

const change = (value: number | null, unit: string, shown: string, units: Units): string => {
  if (value === null) return '';
  const text = shownIn(Math.abs(value), unit, units, shown);
  // Less than is printed is no change.
  if (/^0(\.0*)? /.test(text)) return '';
  return `${value < 0 ? '−' : '+'}${text}`;
};

/** `all passes`, or what is then left. */
const outcome = ({ verdict, failing }: Remedy): string =>
  verdict === 'pass'
    ? 'then everything passes'
    : verdict === 'unknown'
      ? 'then nothing fails'
      : `then ${failing} other finding${failing === 1 ? '' : 's'} still fail${failing === 1 ? 's' : ''}`;

export const remedyText = (remedy: Remedy, units: Units): string => {
  const costs = [
    change(remedy.copper, 'kg', 'g', units) && `copper ${change(remedy.copper, 'kg', 'g', units)}`,
    remedy.copperInAll !== null && `copper ${shownIn(remedy.copperInAll, 'kg', units, 'g')} in all`,
    change(remedy.drop, 'V', 'mV', units) && `drop ${change(remedy.drop, 'V', 'mV', units)}`,
    ...remedy.parts,
  ].filter(Boolean);
  const chosen = remedy.chosen.length === 0 ? '' : `, with ${remedy.chosen.join(', ')}`;
  return `${remedy.says.join('; and ')}: ${outcome(remedy)}${chosen}${costs.length > 0 ? ` (${costs.join(', ')})` : ''}.`;
};

/** The same for programs: SI numbers. */
export const remediesJson = (remedies: readonly Remedy[]) =>
  remedies.map(({ says, mends, verdict, failing, copper, chosen, copperInAll, drop, parts }) => ({
    says,
    mends,
    verdict,
    failing,
    copper_kg: copper,
    chosen,
    copper_in_all_kg: copperInAll,
    drop_V: drop,
    parts,
  }));

export const remedyLines = (remedies: readonly Remedy[], units: Units): string =>
  remedies.length === 0
    ? bullet('No single change that was tried helps.')
    : remedies.map((remedy) => bullet(remedyText(remedy, units))).join('\n');
