/**
 * Workbooks, .xlsx and .ods: the seal stands beside the mark among the keywords of the document, where other programs
 * keep it as it is. Its digest covers name, length and check sum of every part, and the properties without the seal.
 */
import { strFromU8, strToU8 } from 'fflate';
import { type Archive, openArchive, withPart } from '../archive.ts';
import { FIRST_MARK, MARK } from '../mark.ts';
import { isMarked, isOurOds, PROPERTIES } from '../ours.ts';
import { DIGEST, digestOf, type Kind, type State } from './digest.ts';

/** The properties of a document of ours take less than a kilobyte [byte]. */
const LARGEST = 16 * 1024;
const SEALED = new RegExp(`(${[MARK, FIRST_MARK].join('|')}) (${DIGEST})`);

interface Properties {
  readonly path: string;
  readonly text: string;
}

function propertiesOf(archive: Archive): Properties | null {
  const path = PROPERTIES.find((one) => archive.has(one));
  const bytes = path === undefined ? '' : archive.read(path, LARGEST);
  return path === undefined || typeof bytes === 'string' ? null : { path, text: strFromU8(bytes) };
}

const digestIn = (archive: Archive, { path, text }: Properties): Promise<string> =>
  digestOf(
    [
      ...archive.parts
        .filter((part) => part.name !== path)
        .map(({ name, size, crc }) => `${name} ${size} ${crc}\n`)
        .sort(),
      text.replace(SEALED, '$1'),
    ].join(''),
  );

export const archive: Kind = {
  async seal(bytes) {
    const opened = openArchive(bytes);
    const properties = typeof opened === 'string' ? null : propertiesOf(opened);
    if (typeof opened === 'string' || properties === null || !properties.text.includes(MARK))
      throw new Error('a workbook was made without its mark');
    const digest = await digestIn(opened, properties);
    return withPart(bytes, properties.path, strToU8(properties.text.replace(MARK, `${MARK} ${digest}`)));
  },
  async state(bytes): Promise<State> {
    const opened = openArchive(bytes);
    if (typeof opened === 'string') return 'foreign';
    const properties = propertiesOf(opened);
    if (properties === null || !(isMarked(opened) || isOurOds(bytes))) return 'foreign';
    return SEALED.exec(properties.text)?.[2] === (await digestIn(opened, properties)) ? 'as made' : 'edited';
  },
};
