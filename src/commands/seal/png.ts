/** PNG: the seal is a chunk of text before the end (PNG specification, tEXt). */
import { crc32 } from '../../saved/archive.ts';
import { digestOf, type Kind } from '../../saved/seal/digest.ts';

const SIGNATURE = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];
/** The last chunk: no data, its name, its check. */
const END_LENGTH = 12;
const KEYWORD = 'tEXtcoilfeed\0';
const SEAL_LENGTH = 4 + KEYWORD.length + 16 + 4;

function chunk(digest: string): Uint8Array {
  const data = new TextEncoder().encode(KEYWORD + digest);
  const bytes = new Uint8Array(4 + data.length + 4);
  const view = new DataView(bytes.buffer);
  // The length counts neither itself nor name and check.
  view.setUint32(0, data.length - 4);
  bytes.set(data, 4);
  view.setUint32(4 + data.length, crc32(data));
  return bytes;
}

const joined = (...parts: readonly Uint8Array[]): Uint8Array => new Uint8Array(Buffer.concat(parts));

export const png: Kind = {
  async seal(bytes) {
    const end = bytes.length - END_LENGTH;
    return joined(bytes.subarray(0, end), chunk(await digestOf(bytes)), bytes.subarray(end));
  },
  async state(bytes) {
    if (!SIGNATURE.every((byte, i) => bytes[i] === byte)) return 'foreign';
    const end = bytes.length - END_LENGTH;
    const at = end - SEAL_LENGTH;
    const bare = joined(bytes.subarray(0, Math.max(0, at)), bytes.subarray(Math.max(0, end)));
    if (Buffer.from(bytes.subarray(at, end)).equals(chunk(await digestOf(bare)))) return 'as made';
    return Buffer.from(bytes).includes('coilfeed') ? 'edited' : 'foreign';
  },
};
