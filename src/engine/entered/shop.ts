/** Checks of what the shop's file has to choose from, as the reader of a design makes them, and of what a part of it ties together. */
import type { At, Quantity } from '../../basis/quantity.ts';
import type { Design } from '../../design/design.ts';
import { listed } from '../../design/problems.ts';
import { typesOffered } from '../../design/shop/fuses.ts';
import { areaOf, SAME_NUMBER } from '../../design/shop/limits.ts';
import { partOf, type Used } from '../../design/shop/shop.ts';
import { DROPS, usedIn } from '../../design/shop/use.ts';
import { QUANTITIES, type QuantityName } from '../../model/model.ts';
import type { Cells } from './between.ts';
import { ANEW, type Check } from './check.ts';

/** 1 where a word is none of these. */
const noneOf = (word: string, words: readonly string[]): string =>
  words.reduceRight((rest, one) => `IF(${word}="${one}",0,${rest})`, '1');

/** Keys of a fuse that hold for its own rating and type alone, and are no entries. */
const TIED = ['curve', 'rerating'];

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
    ]),
  ];
}

/** What tells how a coil charges: another way may take its place. */
const WAYS = ['inductance', 'test_point', 'peak'];

/** Inputs by their path. */
const BY_PATH = new Map(
  (Object.keys(QUANTITIES) as QuantityName[]).flatMap((name) => {
    const q: Quantity = QUANTITIES[name];
    return q.kind === 'input' ? [[q.path, name] as const] : [];
  }),
);

/** A value that a part of the shop has: where it is emptied, a design file means that of the part again. */
function emptied(design: Design, { value }: Cells): Check[] {
  const of = (part: Used | undefined, base: string, at: At, made: (key: string) => unknown): Check[] => {
    if (part === undefined) return [];
    const input = (key: string): QuantityName | undefined => BY_PATH.get(`${base}.${key}`);
    /** 1 while those values are the part's own without which this one would not hold. */
    const holds = (key: string): string =>
      Object.entries(DROPS[part.kind] ?? {}).reduce((rest, [other, dropped]) => {
        const name = dropped.includes(key) ? input(other) : undefined;
        const was = made(other);
        if (name === undefined || was === undefined) return rest;
        return `IF(${value(name, at)}=${typeof was === 'number' ? was : `"${was}"`},${rest},0)`;
      }, '1');
    return part.keys.flatMap((key): Check[] => {
      const name = WAYS.includes(key) ? undefined : input(key);
      if (name === undefined) return [];
      const takes = `takes a value, as the ${partOf({ ...part, from: null })} has one`;
      return [{ name, at, wrong: `IF(#="",${holds(key)},0)`, takes }];
    });
  };
  return [
    ...of(
      design.used.find(({ path }) => path === 'coil'),
      'coil',
      {},
      () => undefined,
    ),
    ...design.runs.flatMap((own, run) =>
      (['fuse', 'relay'] as const).flatMap((device) =>
        of(
          usedIn(design, run, device),
          `runs.{run}.${device}`,
          { run },
          (key) => (own[device] as Partial<Record<string, unknown>> | null)?.[key],
        ),
      ),
    ),
  ];
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
  if (!part?.keys.some((key) => TIED.includes(key))) return listedOnly;
  const tied = (name: QuantityName, made: number | string): Check => ({
    name,
    at,
    wrong: `IF(${value(name, at)}=${typeof made === 'number' ? made : `"${made}"`},0,1)`,
    takes: `takes ${made}, of which the shop’s file has the curve of “${part.name}”; ${ANEW}`,
  });
  return [...listedOnly, tied('fuse_given', own.rating), tied('fuse_type', own.type)];
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
