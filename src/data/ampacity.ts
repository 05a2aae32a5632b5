/**
 * 33 CFR 183.425 (a US federal regulation for boats, public domain): what a copper conductor may carry.
 */
import type { Quantities } from '../basis/quantity.ts';
import { cite, fromMemory } from '../basis/sources.ts';
import { table } from '../basis/table.ts';

const TABLE_5 = cite('33-CFR-183.425', 'printed', 'table 5');
const NOTE_1 = fromMemory('high', '33-CFR-183.425', 'table 5 note 1');
const NOTE_2 = 'table 5 note 2';

export const ampacity = {
  ampacity_ambient: {
    symbol: 'T₃₀',
    label: 'Ambient temperature of the ampacity table',
    unit: 'degC',
    value: 30,
    source: TABLE_5,
  },
} as const satisfies Quantities;

/** Insulation ratings of the table's columns [degC], with the column that holds each. */
export const AMPACITY_RATINGS = [
  { rating: 60, column: 'at_60' },
  { rating: 75, column: 'at_75' },
  { rating: 80, column: 'at_80' },
  { rating: 90, column: 'at_90' },
  { rating: 105, column: 'at_105' },
  { rating: 125, column: 'at_125' },
  { rating: 200, column: 'at_200' },
] as const;

export const AMPACITY = table({
  title: 'Allowable amperage of conductors below 50 V, 30 °C ambient',
  source: TABLE_5,
  columns: {
    gauge: { unit: 'text', label: 'AWG' },
    at_60: { unit: 'A', label: 'Insulation rated 60 °C' },
    at_75: { unit: 'A', label: 'Insulation rated 75 °C' },
    at_80: { unit: 'A', label: 'Insulation rated 80 °C' },
    at_90: { unit: 'A', label: 'Insulation rated 90 °C' },
    at_105: { unit: 'A', label: 'Insulation rated 105 °C' },
    at_125: { unit: 'A', label: 'Insulation rated 125 °C' },
    at_200: { unit: 'A', label: 'Insulation rated 200 °C' },
  },
  rows: [
    ['18', 10, 10, 15, 20, 20, 25, 25],
    ['16', 15, 15, 20, 25, 25, 30, 35],
    ['14', 20, 20, 25, 30, 35, 40, 45],
    ['12', 25, 25, 35, 40, 45, 50, 55],
    ['10', 40, 40, 50, 55, 60, 70, 70],
    ['8', 55, 65, 70, 70, 80, 90, 100],
    ['6', 80, 95, 100, 100, 120, 125, 135],
    ['4', 105, 125, 130, 135, 160, 170, 180],
    ['3', 120, 145, 150, 155, 180, 195, 210],
    ['2', 140, 170, 175, 180, 210, 225, 240],
    ['1', 165, 195, 210, 210, 245, 265, 280],
    ['1/0', 195, 230, 245, 245, 285, 305, 325],
    ['2/0', 225, 265, 285, 285, 330, 355, 370],
    ['3/0', 260, 310, 330, 330, 385, 410, 430],
    ['4/0', 300, 360, 385, 385, 445, 475, 510],
  ],
  check: {
    rows: 15,
    sums: { at_60: 1755, at_75: 2070, at_80: 2225, at_90: 2265, at_105: 2625, at_125: 2830, at_200: 3010 },
  },
});

export const ENGINE_SPACE = table({
  title: 'Factor on the allowable amperage in engine spaces, 50 °C',
  source: NOTE_1,
  note:
    'Check values for the ambient correction: all but the 200 °C one follow sqrt((TR − 50)/(TR − 30)) within one ' +
    'unit of the last digit. At 200 °C the note makes no reduction where the law gives 0.94; we follow the law.',
  columns: {
    rating: { unit: 'degC', label: 'Insulation rating' },
    factor: { unit: '1', label: 'Factor' },
  },
  rows: [
    [60, 0.58],
    [75, 0.75],
    [80, 0.78],
    [90, 0.82],
    [105, 0.85, cite('33-CFR-183.425', 'quoted', 'table 5 note 1')],
    [125, 0.89],
    [200, 1.0],
  ],
  check: { rows: 7, sums: { rating: 735, factor: 5.67 } },
});

export const BUNDLE = table({
  title: 'Factor on the allowable amperage of conductors laid together',
  source: cite('33-CFR-183.425', 'quoted', NOTE_2),
  note: 'The regulation applies it only at 50 V and above; below, it is taken here as a cautious default.',
  columns: {
    from: { unit: '1', label: 'Current-carrying conductors, at least' },
    to: { unit: '1', label: 'at most', empty: true },
    factor: { unit: '1', label: 'Factor' },
  },
  rows: [
    [1, 2, 1, cite('33-CFR-183.425', 'quoted', `${NOTE_2}: it begins at three conductors`)],
    [3, 3, 0.7],
    [4, 6, 0.6],
    [7, 24, 0.5],
    [25, null, 0.4],
  ],
  // The four factors of the note add up to 2.20; the first row is what stands before the note begins.
  check: { rows: 5, sums: { from: 40, to: 35, factor: 3.2 } },
});
