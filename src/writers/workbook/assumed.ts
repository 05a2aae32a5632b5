/** What was taken where the design says nothing, a row each, for as long as nobody enters something else. */
import { type At, bareLabel } from '../../basis/quantity.ts';
import { AS_STATED, printCitation } from '../../basis/sources.ts';
import type { Design } from '../../design/design.ts';
import { keyText } from '../../design/problems.ts';
import type { Cell } from '../../engine/cell.ts';
import { members } from '../../engine/cells.ts';
import { type Checked, changedFormula, checkedOf } from '../../engine/entered/sheet.ts';
import type { Grid } from '../../engine/translate.ts';
import { QUANTITIES, type QuantityName } from '../../model/model.ts';
import { keyOf } from '../../saved/keys.ts';
import { printWritten } from '../../views/print.ts';
import { words } from './page.ts';

/** What it is, where it would stand in the design file, what was taken, why. */
export function assumed(grid: Grid, design: Design): Cell[][] {
  const checked = checkedOf(grid, design);
  const entries = entriesByKey(grid, design);
  return design.assumed.map(({ path, value, why }) => {
    const entry = entries.get(path);
    const taken = printWritten(value, design.units);
    if (entry === undefined) return [words(''), words(path), words(taken), words(why)];
    return [
      words(labelOf(grid, entry)),
      words(path),
      whileKept(checked, entry, taken, 'see Inputs'),
      whileKept(checked, entry, why, printCitation(AS_STATED)),
    ];
  });
}

interface Entry {
  readonly name: QuantityName;
  readonly at: At;
}

/** Every input by its key in the design file. */
export function entriesByKey(grid: Grid, design: Design): ReadonlyMap<string, Entry> {
  const found = new Map<string, Entry>();
  for (const [name, place] of grid.placement.entries) {
    const q = QUANTITIES[name];
    if (q.kind !== 'input') continue;
    for (const at of members(grid.axes, place.rows))
      found.set(keyText(keyOf(design, q.path, at)), { name, at });
  }
  return found;
}

/** `Relay: contact resistance, main` */
function labelOf(grid: Grid, { name, at }: Entry): string {
  const { label, per = [] } = QUANTITIES[name] as { label: string; per?: readonly (keyof At)[] };
  const of = per.map((axis) => grid.axes[axis][at[axis] as number]);
  return [bareLabel(label), ...of].join(', ');
}

const whileKept = (checked: Checked, { name, at }: Entry, kept: string, otherwise: string): Cell => ({
  role: 'member',
  formula: `IF(${changedFormula(checked, name, [at])}>0,"${otherwise}","${kept.replaceAll('"', '""')}")`,
});
