/** PNG: the seal is a chunk of text before the end (PNG specification, tEXt). */
import { SIGNATURE, textChunk } from '../../pictures/mark.ts';
import { digestOf, type Kind } from '../../saved/seal/digest.ts';

/** The last chunk: no data, its name, its check. */
const END_LENGTH = 12;
const KEYWORD = 'coilfeed';
const SEAL_LENGTH = textChunk(KEYWORD, '0'.repeat(16)).length;

const chunk = (digest: string): Uint8Array => textChunk(KEYWORD, digest);

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
