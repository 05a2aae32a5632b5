/** The lists of a workbook: its sheets with their parts, its defined names with the cells that they stand for. */
import { columnOf } from '../basis/address.ts';
import { type Tag, tagsOf } from './xml.ts';

/** A rectangle of cells, counted from 0, both ends included. */
export interface Area {
  readonly sheet: string;
  readonly top: number;
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
}

/** Part of each sheet, by the sheet's name. */
export function sheetParts(workbook: string, relationships: string): Map<string, string> {
  const targets = new Map<string, string>();
  for (const { attributes } of tagsOf(relationships, 'Relationship'))
    targets.set(attributes.get('Id') ?? '', attributes.get('Target') ?? '');
  const parts = new Map<string, string>();
  for (const { attributes } of tagsOf(workbook, 'sheet')) {
    const target = targets.get(attributes.get('r:id') ?? relationOf(attributes)) ?? '';
    parts.set(attributes.get('name') ?? '', target.startsWith('/') ? target.slice(1) : `xl/${target}`);
  }
  return parts;
}

/** The prefix of this attribute is free. */
const relationOf = (attributes: Tag['attributes']): string =>
  [...attributes].find(([key]) => key.endsWith(':id'))?.[1] ?? '';

/** Defined names of the whole workbook, in small letters; null for one that stands for no cells any more. */
export function namedAreas(workbook: string): Map<string, Area | null> {
  const areas = new Map<string, Area | null>();
  for (const { attributes, text } of tagsOf(workbook, 'definedName')) {
    const name = attributes.get('name')?.toLowerCase();
    // A copied sheet brings names of its own; those of the workbook are the ones that we gave.
    if (name !== undefined && !attributes.has('localSheetId')) areas.set(name, areaOf(text));
  }
  return areas;
}

const AREA =
  /^(?:'((?:[^']|''){1,80})'|([^'!:]{1,80}))!\$?([A-Z]{1,3})\$?(\d{1,7})(?::\$?([A-Z]{1,3})\$?(\d{1,7}))?$/;

function areaOf(text: string): Area | null {
  const match = AREA.exec(text.trim());
  if (match === null) return null;
  const [, quoted, plain, left = '', top = '', right = left, bottom = top] = match;
  const columns = [columnOf(left), columnOf(right)];
  const rows = [Number(top) - 1, Number(bottom) - 1];
  return {
    sheet: quoted?.replaceAll("''", "'") ?? plain ?? '',
    top: Math.min(...rows),
    bottom: Math.max(...rows),
    left: Math.min(...columns),
    right: Math.max(...columns),
  };
}
