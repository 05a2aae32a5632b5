/** CSV has no comments: the seal is the title of a last, empty column. */
import { DIGEST, digestOf, type Kind } from '../../saved/seal/digest.ts';

const SEAL = new RegExp(`,coilfeed ${DIGEST}$`);
const [QUOTE, RETURN, FEED] = [0x22, 0x0d, 0x0a];

/** Changes each record that is not empty; a line break inside quotes ends none. */
function eachRecord(text: string, change: (record: string, i: number) => string): string {
  const out: string[] = [];
  let [start, quoted, i] = [0, false, 0];
  for (let at = 0; at <= text.length; at++) {
    const sign = text.charCodeAt(at);
    if (sign === QUOTE) quoted = !quoted;
    if (at < text.length && (quoted || (sign !== FEED && sign !== RETURN))) continue;
    if (at > start) out.push(change(text.slice(start, at), i++));
    out.push(text.slice(at, at + 1));
    start = at + 1;
  }
  return out.join('');
}

/** A byte order mark, where there is one, stays. */
const decoded = (bytes: Uint8Array): string => new TextDecoder('utf-8', { ignoreBOM: true }).decode(bytes);

async function seal(bytes: Uint8Array): Promise<Uint8Array> {
  const title = `coilfeed ${await digestOf(bytes)}`;
  const text = eachRecord(decoded(bytes), (record, i) => `${record},${i === 0 ? title : ''}`);
  return new TextEncoder().encode(text);
}

export const csv: Kind = {
  seal,
  async state(bytes) {
    let ours = false;
    const bare = eachRecord(decoded(bytes), (record, i) => {
      if (i > 0) return record.replace(/,$/, '');
      ours = SEAL.test(record);
      return record.replace(SEAL, '');
    });
    if (!ours) return 'foreign';
    return Buffer.from(await seal(new TextEncoder().encode(bare))).equals(bytes) ? 'as made' : 'edited';
  },
};
