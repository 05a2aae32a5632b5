/** Checks of what the shop's file has to choose from, as the reader of a design makes them, and of what a part of it ties together. */
import type { At } from '../../basis/quantity.ts';
import type { Design } from '../../design/design.ts';
import { listed } from '../../design/problems.ts';
import { typesOffered } from '../../design/shop/fuses.ts';
import { areaOf, SAME_NUMBER } from '../../design/shop/limits.ts';
import { DROPS } from '../../design/shop/shop.ts';
import { usedIn } from '../../design/shop/use.ts';
import { QUANTITIES, type QuantityName } from '../../model/model.ts';
import type { Cells } from './between.ts';
import { ANEW, type Check } from './check.ts';
import { type Device, deviceNamed, elsewhere, isFixed, keyOf, PART_OF, usedAs } from './parts.ts';
import { lookedUp, namesFor } from './shelf.ts';

/** 1 where a word is none of these. */
const noneOf = (word: string, words: readonly string[]): string =>
  words.reduceRight((rest, one) => `IF(${word}="${one}",0,${rest})`, '1');

export function ofShop(design: Design, cells: Cells): Check[] {
  const { shop, runs } = design;
  if (shop === null) return [];
  return [
    ...emptied(design, cells),
    ...runs.flatMap((_, run) => [
      ...terminals(design, run, cells),
      ...insulation(design, run, cells),
      ...fuse(design, run, cells),
      ...relay(design, run, cells),
      ...byHeat(design, run, cells),
    ]),
  ];
}

/** What tells how a coil charges: another way may take its place. */
const WAYS = ['inductance', 'test_point', 'peak'];

const ofDevice = (device: Device): [QuantityName, string][] =>
  (Object.keys(QUANTITIES) as QuantityName[]).flatMap((name) => {
    const [own, key = ''] = keyOf(name) ?? [];
    return own === device && QUANTITIES[name].kind === 'input' ? [[name, key]] : [];
  });

/** Where a part of the shop is used, by its kind. */
const places = ({ runs }: Design): [Device, At][] => [
  ['coil', {}],
  ...runs.flatMap((_, run): [Device, At][] => [
    ['fuse', { run }],
    ['relay', { run }],
  ]),
];

/** A value that a part of the shop has: where it is emptied, a design file means that of the part again. */
const emptied = (design: Design, { entry }: Cells): Check[] =>
  places(design).flatMap(([device, at]) => {
    const part = usedAs(design, device, at);
    if (part === undefined) return [];
    const inputs = ofDevice(device);
    const has = (name: QuantityName): string | null => lookedUp(design, name, at, entry(PART_OF[device], at));
    /** 1 while those values are the part's own without which this one would not hold. */
    const holds = (key: string): string =>
      inputs.reduce((rest, [name, other]) => {
        const own = DROPS[part.kind]?.[other]?.includes(key) ? has(name) : null;
        return own === null ? rest : `IF(${entry(name, at)}=${own},${rest},0)`;
      }, '1');
    return inputs.flatMap(([name, key]): Check[] => {
      const own = WAYS.includes(key) ? null : has(name);
      const takes = `takes a value, as the ${device} of the shop’s file has one`;
      return own === null ? [] : [{ name, at, wrong: `IF(#="",IF(${own}="",0,${holds(key)}),0)`, takes }];
    });
  });

/** The name of a part: one of those that may be chosen. Null for an input that is none. */
export function ofName(design: Design, name: QuantityName, at: At): Check | null {
  const device = deviceNamed(name);
  if (device === undefined) return null;
  const [used, names] = [usedAs(design, device, at), namesFor(design, device, at)];
  if (used === undefined || names === null)
    return {
      name,
      at,
      wrong: 'IF(#="",0,1)',
      takes: `takes nothing: the design uses no ${device} of the shop here; ${ANEW}`,
    };
  const made = `EXACT(#,"${used.name.replaceAll('"', '""')}")`;
  // A star would be a wildcard in a look-up: the find is compared.
  const found = `IFERROR(IF(EXACT(INDEX(${names},MATCH(#,${names},0),1),#),0,1),1)`;
  const takes = isFixed(design, device, used)
    ? `takes “${used.name}”`
    : `takes the name of a ${device} of its list`;
  return {
    name,
    at,
    wrong: isFixed(design, device, used) ? `IF(${made},0,1)` : `IF(${made},0,${found})`,
    takes: `${takes}. ${elsewhere(design, device, used)}`,
  };
}

/** Sizes that the terminals of a run, and the connectors of coils, take. */
function terminals({ runs }: Design, run: number, { value, all }: Cells): Check[] {
  const at = { run };
  const { smallest, largest } = (runs[run] as Design['runs'][number]).takes;
  /** 1 where the area of a size is beyond this one [mm²]. */
  const beyond = (name: QuantityName, sign: string, area: number): string =>
    `IFERROR(IF(INDEX(${all('size_area')},MATCH(${value(name, at)},${all('size_name')},0),1)${sign}${area},1,0),0)`;
  const checks = (own: QuantityName, sign: string, stated: number, bound: number, takes: string): Check[] => [
    { name: 'run_gauge', at, wrong: beyond('run_gauge', sign, stated), takes },
    { name: own, at, wrong: `IF(#="",1,${beyond(own, sign, bound)})`, takes },
  ];
  const [up, down] = [largest, smallest].map((bound) => (bound === null ? 0 : areaOf(bound.size))) as [
    number,
    number,
  ];
  const most = up * (1 + 1e-9);
  return [
    ...(largest === null
      ? []
      : checks(
          'run_largest',
          '>',
          most,
          most,
          `takes a size up to ${largest.size}: no larger one fits ${largest.by}`,
        )),
    ...(smallest === null
      ? []
      : checks(
          'run_smallest',
          '<',
          down * (1 - SAME_NUMBER),
          down * (1 - 1e-9),
          `takes a size from ${smallest.size} on: no smaller one fits ${smallest.by}`,
        )),
  ];
}

function insulation({ shop }: Design, run: number, { value }: Cells): Check[] {
  const there = shop?.insulations;
  if (there === undefined) return [];
  return [
    {
      name: 'run_insulation',
      at: { run },
      wrong: noneOf(value('run_insulation', { run }), there),
      takes: `takes ${listed(there)}: this workbook holds no other wire of the shop`,
    },
  ];
}

function fuse(design: Design, run: number, { value }: Cells): Check[] {
  const own = design.runs[run]?.fuse;
  if (!own) return [];
  const at = { run };
  const types = typesOffered(design.shop);
  const listedOnly: Check[] =
    types === null
      ? []
      : [
          {
            name: 'fuse_type',
            at,
            wrong: `IF(${value('fuse_given', at)}="auto",${noneOf(value('fuse_type', at), types)},0)`,
            takes: `takes ${types.length === 0 ? 'a rating' : `${listed(types)}, of which the shop’s file lists fuses, or a rating`} beside it`,
          },
        ];
  const part = usedIn(design, run, 'fuse');
  if (!part?.keys.includes('curve')) return listedOnly;
  const tied = (name: QuantityName, made: number | string): Check => ({
    name,
    at,
    wrong: `IF(${value(name, at)}=${typeof made === 'number' ? made : `"${made}"`},0,1)`,
    takes: `takes ${made}, of which the shop’s file has the curve of “${part.name}”; ${ANEW}`,
  });
  return [...listedOnly, tied('fuse_given', own.rating), tied('fuse_type', own.type)];
}

/** What the maker says of a part by temperature holds for its own rating and type alone, and is no entry. */
function byHeat(design: Design, run: number, { entry }: Cells): Check[] {
  const at = { run };
  const tied = (device: 'fuse' | 'relay', table: QuantityName, names: readonly QuantityName[]): Check[] =>
    (usedIn(design, run, device) === undefined ? [] : names).flatMap((name) => {
      const [has, own] = [table, name].map((one) => lookedUp(design, one, at, entry(PART_OF[device], at)));
      const takes = `takes what the ${device} of the shop’s file has, whose values by temperature hold for it alone; ${ANEW}`;
      return has == null || own == null
        ? []
        : [{ name, at, wrong: `IF(${has}=1,IF(#=${own},0,1),0)`, takes }];
    });
  return [
    ...tied('fuse', 'fuse_own_table', ['fuse_given', 'fuse_type']),
    ...tied('relay', 'relay_own_table', ['relay_given']),
  ];
}

function relay({ shop, runs }: Design, run: number, { value }: Cells): Check[] {
  const own = runs[run]?.relay;
  if (!own || own.rating === 'auto' || !shop?.relays?.length) return [];
  return [
    {
      name: 'relay_given',
      at: { run },
      wrong: `IF(${value('relay_given', { run })}="auto",1,0)`,
      takes: `takes a rating: which relay of the shop serves is found anew; ${ANEW}`,
    },
  ];
}
