/**
 * The seal of a file that coilfeed writes: a digest of its own content, inside the file. By it the next run knows
 * whether somebody edited the file since. It guards against loss, not against forgery.
 */

/**
 * as made: sealed, and nothing was changed. edited: made by coilfeed, and changed or saved by another program since.
 * foreign: of a kind that is sealed, and without a mark of ours. unsealed: of a kind that bears no seal.
 */
export type State = 'as made' | 'edited' | 'foreign' | 'unsealed';

/** How a kind of file is sealed. */
export interface Kind {
  /** The bytes with the seal inside. */
  seal(bytes: Uint8Array): Promise<Uint8Array>;
  state(bytes: Uint8Array): Promise<State>;
}

/** Whether digests can be made here: a browser has them only for a page from disk or by https. */
export const canDigest = (): boolean => globalThis.crypto?.subtle !== undefined;

/** SHA-256 in hexadecimal, by what browsers and Node.js have in common. */
export async function sha256(content: Uint8Array | string): Promise<string> {
  const bytes = typeof content === 'string' ? new TextEncoder().encode(content) : content.slice();
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));
  return Array.from(digest, (byte) => byte.toString(16).padStart(2, '0')).join('');
}

/** Sixteen digits of SHA-256: enough to tell an edit. */
export const digestOf = async (content: Uint8Array | string): Promise<string> =>
  (await sha256(content)).slice(0, 16);

export const DIGEST = '[0-9a-f]{16}';
