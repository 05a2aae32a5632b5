/** The words and values that the lists in the cells of Inputs offer, a column for each kind of entry. */

import { address } from '../../basis/address.ts';
import { printInsulation } from '../../basis/print.ts';
import type { Quantity } from '../../basis/quantity.ts';
import type { Design } from '../../design/design.ts';
import { CLOSES, MATERIALS, SERIES, SUPPRESSIONS } from '../../design/names.ts';
import { put, type Sheet } from '../../engine/cell.ts';
import { QUANTITIES, type QuantityName } from '../../model/model.ts';
import { opening, type Page } from './page.ts';

export const CHOICES = 'Choices';

type Choice = string | number;

/** Every different value of a column of the tables. */
const column = (name: QuantityName): Choice[] => {
  const q: Quantity = QUANTITIES[name];
  if (q.kind !== 'column') throw new Error(`${name} is no column of a table`);
  return [...new Set(q.values.flat().filter((value) => value !== null) as Choice[])];
};
const rising = (values: readonly Choice[]): Choice[] => [...values].sort((a, b) => Number(a) - Number(b));

/** What can be chosen, by the entry that takes it. */
const LISTS = {
  stroke: [2, 4],
  series: SERIES,
  smallest: column('size_name'),
  run_gauge: ['auto', ...column('size_name')],
  run_smallest: column('size_name'),
  run_largest: column('size_name'),
  run_material: MATERIALS,
  run_insulation: column('insulation_name'),
  fuse_type: column('type_name'),
  fuse_given: ['auto', ...rising(column('fuse_size_rating'))],
  relay_given: ['auto', ...rising(column('relay_size_rating'))],
  relay_suppression: SUPPRESSIONS,
  relay_closes: CLOSES,
} as const satisfies Partial<Record<QuantityName, readonly Choice[]>>;

const TOP = 4;

export const isChosen = (name: QuantityName): name is keyof typeof LISTS => Object.hasOwn(LISTS, name);

/** A list of choices, and what it is a list of. */
interface List {
  readonly title: string;
  readonly choices: readonly Choice[];
}

/** What the shop has to choose from for one run: its wire of the insulation, its fuses of the type. Null: anything. */
function ofShop({ shop, shelf, runs }: Design, name: QuantityName, run: number): List | null {
  const own = runs[run];
  const title = (of: string): string => `${QUANTITIES[name].label}: of the shop, ${of}`;
  if (name === 'run_gauge' && shelf !== null && own !== undefined) {
    const sizes = shelf.filter(({ insulation }) => insulation === own.insulation).map(({ size }) => size);
    return {
      title: title(printInsulation(own.insulation)),
      choices: ['auto', ...column('size_name').filter((size) => sizes.includes(String(size)))],
    };
  }
  const { type } = own?.fuse ?? {};
  const ratings = shop?.fuses?.flatMap((fuse) => (fuse.type === type ? [fuse.rating] : [])) ?? [];
  if (name === 'fuse_given' && ratings.length > 0)
    return { title: title(`type ${type}`), choices: ['auto', ...rising([...new Set(ratings)])] };
  return null;
}

/** What a quantity takes in all runs alike. */
function general({ shop }: Design, name: keyof typeof LISTS): List {
  const some = name === 'run_insulation' ? shop?.insulations : undefined;
  const choices = LISTS[name] as readonly Choice[];
  return {
    title: QUANTITIES[name].label,
    choices: some === undefined ? choices : choices.filter((one) => some.includes(String(one))),
  };
}

/** Every list once, in the order of its column. */
function listsOf(design: Design): Map<string, List> {
  const lists = new Map<string, List>();
  for (const name of Object.keys(LISTS) as (keyof typeof LISTS)[])
    for (const run of design.runs.keys()) {
      const list = ofShop(design, name, run) ?? general(design, name);
      lists.set(list.title, list);
    }
  return lists;
}

/** `Choices!$C$5:$C$9`: what may be chosen for a quantity in all runs; for one run where the shop has other things for it. */
export function choicesFor(design: Design, name: keyof typeof LISTS, run = 0): string {
  const { title, choices } = ofShop(design, name, run) ?? general(design, name);
  const at = [...listsOf(design).keys()].indexOf(title);
  return `${CHOICES}!${address(TOP, at)}:${address(TOP + choices.length - 1, at)}`;
}

/** Whether the lists of a quantity differ between the runs. */
export const byRun = (design: Design, name: keyof typeof LISTS): boolean =>
  design.runs.some((_, run) => ofShop(design, name, run) !== null);

export function choicesPage(design: Design): Page {
  const cells: Sheet = [];
  opening(
    cells,
    'Choices',
    'The choices that the cells of Inputs offer; sizes and ratings come from the tables, or from the shop’s file.',
  );
  const lists = [...listsOf(design).values()];
  lists.forEach(({ title, choices }, i) => {
    put(cells, TOP - 1, i, { role: 'label', value: title });
    choices.forEach((value, j) => {
      put(cells, TOP + j, i, { role: 'given', value });
    });
  });
  return {
    name: CHOICES,
    kind: 'working',
    cells,
    widths: lists.map(() => 22),
    frozen: [TOP, 0],
    landscape: true,
    looks: [],
  };
}
