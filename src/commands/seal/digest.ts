/**
 * The seal of a file that coilfeed writes: a digest of its own content, inside the file. By it the next run knows
 * whether somebody edited the file since. It guards against loss, not against forgery.
 */
import { createHash } from 'node:crypto';

/**
 * as made: sealed, and nothing was changed. edited: made by coilfeed, and changed or saved by another program since.
 * foreign: of a kind that is sealed, and without a mark of ours. unsealed: of a kind that bears no seal.
 */
export type State = 'as made' | 'edited' | 'foreign' | 'unsealed';

/** How a kind of file is sealed. */
export interface Kind {
  /** The bytes with the seal inside. */
  seal(bytes: Uint8Array): Uint8Array;
  state(bytes: Uint8Array): State;
}

/** Sixteen digits of SHA-256: enough to tell an edit. */
export function digestOf(...parts: readonly (Uint8Array | string)[]): string {
  const hash = createHash('sha256');
  for (const part of parts) hash.update(part);
  return hash.digest('hex').slice(0, 16);
}

export const DIGEST = '[0-9a-f]{16}';
