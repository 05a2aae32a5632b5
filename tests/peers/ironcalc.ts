/**
 * IronCalc as a judge of single formulas: another program's reading of each of them, over values that are given. A whole
 * workbook at once takes it minutes, since it walks every range of every formula again; sheet by sheet it is quick.
 */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { initSync, Model } from '@ironcalc/wasm';
import type { Value } from '../../src/engine/evaluate.ts';
import type { Laid } from '../../src/engine/spreadsheet.ts';
import { definedNames } from '../../src/writers/workbook/names.ts';

let ready = false;

/** Fifteen digits, since it gives values only as they are formatted. */
const DIGITS = '0.00000000000000E+00';
/** Of the last of those digits, and of a sum in another order. */
const RELATIVE = 1e-9;
/** Near 0 a difference of terms leaves nothing but rounding. */
const NEAR_ZERO = 1e-12;

export interface Judgement {
  readonly formulas: number;
  /** A line for each that it makes something else of. */
  readonly differ: readonly string[];
}

/** Evaluates the formulas of each sheet that `wanted` names, all other cells being the values that we have. */
export function judge(e: Laid, wanted: (sheet: string) => boolean): Map<string, Judgement> {
  if (!ready) {
    const path = createRequire(import.meta.url).resolve('@ironcalc/wasm/wasm_bg.wasm');
    initSync({ module: readFileSync(path) });
    ready = true;
  }
  const model = new Model('book', 'en', 'UTC', 'en');
  model.pauseEvaluation();
  const sheets = [...e.sheets.keys()];
  const put = (sheet: number, row: number, column: number, value: Value, formula: boolean): void => {
    // An empty text that is a result is one that a formula made; an empty cell is empty.
    const text = value === null || value === '' ? (formula ? '=""' : '') : value;
    model.setUserInput(
      sheet,
      row + 1,
      column + 1,
      typeof text === 'number' || text === '' || text === '=""' ? String(text) : `'${text}`,
    );
  };
  sheets.forEach((name, i) => {
    if (i > 0) model.newSheet();
    model.renameSheet(i, name);
  });
  for (const [name, to] of definedNames(e.grid)) model.newDefinedName(name, null, to);
  const formulas = sheets.map((name, i) => {
    const own: [row: number, column: number, formula: string, value: Value][] = [];
    e.sheets.get(name)?.forEach((cells, row) => {
      cells.forEach((cell, column) => {
        if (cell === undefined) return;
        const value = cell.formula === undefined ? (cell.value ?? null) : e.cached(name, row, column);
        put(i, row, column, value, cell.formula !== undefined);
        if (cell.formula !== undefined) own.push([row, column, cell.formula, value]);
      });
    });
    return own;
  });
  const found = new Map<string, Judgement>();
  sheets.forEach((name, i) => {
    const own = formulas[i] ?? [];
    if (own.length === 0 || !wanted(name)) return;
    const [height, width] = [0, 1].map((k) => Math.max(...own.map((one) => one[k as 0 | 1])) + 1) as [
      number,
      number,
    ];
    model.updateRangeStyle({ sheet: i, row: 1, column: 1, height, width }, 'num_fmt', DIGITS);
    for (const [row, column, formula] of own) model.setUserInput(i, row + 1, column + 1, `=${formula}`);
    model.evaluate();
    const differ = own.flatMap(([row, column, formula, value]) => {
      const theirs = model.getFormattedCellValue(i, row + 1, column + 1);
      return same(value, theirs)
        ? []
        : [`${row + 1},${column + 1}: ${value} here, ${theirs} there, =${formula}`];
    });
    found.set(name, { formulas: own.length, differ });
    for (const [row, column, , value] of own) put(i, row, column, value, true);
  });
  model.free();
  return found;
}

function same(ours: Value, theirs: string): boolean {
  if (typeof ours !== 'number') return (ours ?? '') === theirs;
  const number = Number(theirs);
  return theirs !== '' && Math.abs(number - ours) <= Math.max(NEAR_ZERO, RELATIVE * Math.abs(ours));
}
