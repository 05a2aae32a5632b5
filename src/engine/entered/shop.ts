/** Checks of what the shop's file has to choose from, as the reader of a design makes them, and of what a part of it ties together. */
import type { Design } from '../../design/design.ts';
import { runKey } from '../../design/layout.ts';
import { keyText, listed } from '../../design/problems.ts';
import { typesOffered } from '../../design/shop/fuses.ts';
import type { QuantityName } from '../../model/model.ts';
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
  return runs.flatMap((_, run) => [
    ...insulation(design, run, cells),
    ...fuse(design, run, cells),
    ...relay(design, run, cells),
  ]);
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
  const path = keyText([...runKey(design, run), 'fuse']);
  const part = design.used.find((one) => one.path === path);
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
