/** Seals a file by its kind, and looks whether one is still as it was made. */

import type { Kind, State } from '../../saved/seal/digest.ts';
import { csv } from './csv.ts';
import { markup } from './markup.ts';
import { png } from './png.ts';

async function kindOf(path: string): Promise<Kind | null> {
  switch (/\.(\w+)$/.exec(path)?.[1]?.toLowerCase()) {
    case 'xlsx':
    case 'ods':
      // Loaded only here, because it brings what unpacks archives.
      return (await import('../../saved/seal/archive.ts')).archive;
    case 'svg':
    case 'html':
    case 'htm':
      return markup;
    case 'png':
      return png;
    case 'csv':
      return csv;
    default:
      return null;
  }
}

/** The bytes with the seal of their kind; a design in YAML bears none, since people write on in it. */
export const sealed = async (path: string, bytes: Uint8Array): Promise<Uint8Array> =>
  (await (await kindOf(path))?.seal(bytes)) ?? bytes;

/** Whether the bytes that stand under a name are as coilfeed wrote them. Never throws on account of the bytes. */
export const stateOf = async (path: string, bytes: Uint8Array): Promise<State> =>
  (await (await kindOf(path))?.state(bytes)) ?? 'unsealed';
