/**
 * Recognises a workbook that coilfeed made, also after a person saved it with another program: by a mark among the
 * properties of the document. The bytes may be anything; only one small entry of the archive is ever unpacked.
 */
import { inflateSync, strFromU8 } from 'fflate';

export const MARK = 'coilfeed-workbook/1';

const PROPERTIES = 'docProps/core.xml';
/** The properties of a document of ours take less than a kilobyte. */
const LARGEST = 64 * 1024;
const MOST_ENTRIES = 10_000;

const END = 0x06054b50;
const END_LENGTH = 22;
const LONGEST_COMMENT = 0xffff;
const CENTRAL = 0x02014b50;
const CENTRAL_LENGTH = 46;
const LOCAL = 0x04034b50;
const LOCAL_LENGTH = 30;
const STORED = 0;
const DEFLATED = 8;

/** True for a workbook of ours. Never throws. */
export function isOurs(bytes: Uint8Array): boolean {
  try {
    const keywords = /<cp:keywords(?:\s[^>]*)?>([^<]*)<\/cp:keywords>/.exec(properties(bytes) ?? '')?.[1];
    return keywords?.includes(MARK) === true;
  } catch {
    // A view outside of the bytes, or a stream that cannot be unpacked.
    return false;
  }
}

/** Text of the document's properties; null when the bytes are no archive that has them. */
function properties(bytes: Uint8Array): string | null {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const end = endOf(view);
  if (end === null) return null;
  const count = view.getUint16(end + 10, true);
  if (count > MOST_ENTRIES) return null;
  let at = view.getUint32(end + 16, true);
  for (let i = 0; i < count; i++) {
    if (view.getUint32(at, true) !== CENTRAL) return null;
    const nameLength = view.getUint16(at + 28, true);
    const name = bytes.subarray(at + CENTRAL_LENGTH, at + CENTRAL_LENGTH + nameLength);
    if (nameLength === PROPERTIES.length && strFromU8(name) === PROPERTIES) return entry(bytes, view, at);
    at += CENTRAL_LENGTH + nameLength + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
  }
  return null;
}

/** Where the end of the central directory stands: at the end of the file, with at most a comment behind it. */
function endOf(view: DataView): number | null {
  const last = view.byteLength - END_LENGTH;
  for (let at = last; at >= Math.max(0, last - LONGEST_COMMENT); at--)
    if (view.getUint32(at, true) === END) return at;
  return null;
}

function entry(bytes: Uint8Array, view: DataView, central: number): string | null {
  const method = view.getUint16(central + 10, true);
  const packed = view.getUint32(central + 20, true);
  const size = view.getUint32(central + 24, true);
  const local = view.getUint32(central + 42, true);
  if (packed > LARGEST || size > LARGEST || view.getUint32(local, true) !== LOCAL) return null;
  const start = local + LOCAL_LENGTH + view.getUint16(local + 26, true) + view.getUint16(local + 28, true);
  const data = bytes.subarray(start, start + packed);
  if (method === STORED) return strFromU8(data);
  // What would not fit into the size that the directory states is dropped, so that nothing can swell.
  return method === DEFLATED ? strFromU8(inflateSync(data, { out: new Uint8Array(size) })) : null;
}
