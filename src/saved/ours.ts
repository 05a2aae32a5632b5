/**
 * Recognises a workbook that coilfeed made, also after a person saved it with another program: by a mark among the
 * properties of the document. The bytes may be anything; only one small entry of the archive is ever unpacked.
 */
import { strFromU8 } from 'fflate';
import { type Archive, openArchive } from './archive.ts';
import { FIRST_MARK, MARK } from './mark.ts';

const XLSX_PROPERTIES = 'docProps/core.xml';
const ODS_PROPERTIES = 'meta.xml';
/** Parts in which the properties of a document stand. */
export const PROPERTIES = [XLSX_PROPERTIES, ODS_PROPERTIES];
/** The properties of a document of ours take less than a kilobyte. */
const LARGEST = 16 * 1024;

/** True for a workbook of ours. Never throws. */
export function isOurs(bytes: Uint8Array): boolean {
  const archive = openArchive(bytes);
  return typeof archive !== 'string' && isMarked(archive);
}

/** True for a workbook of ours that LibreOffice wrote in its own format. Never throws. */
export function isOurOds(bytes: Uint8Array): boolean {
  const archive = openArchive(bytes);
  if (typeof archive === 'string') return false;
  const properties = archive.read(ODS_PROPERTIES, LARGEST);
  if (typeof properties === 'string') return false;
  const text = strFromU8(properties);
  return [MARK, FIRST_MARK].some((mark) => text.includes(`<meta:keyword>${mark}`));
}

/** Which mark of ours the properties of the document hold; null for none. */
export function markIn(archive: Archive): string | null {
  const properties = archive.read(XLSX_PROPERTIES, LARGEST);
  if (typeof properties === 'string') return null;
  const keywords = /<cp:keywords(?:\s[^>]*)?>([^<]*)<\/cp:keywords>/.exec(strFromU8(properties))?.[1] ?? '';
  return [MARK, FIRST_MARK].find((mark) => keywords.includes(mark)) ?? null;
}

/** True when the properties of the document hold a mark of ours. */
export const isMarked = (archive: Archive): boolean => markIn(archive) !== null;
