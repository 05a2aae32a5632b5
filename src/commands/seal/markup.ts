/** HTML and SVG: the seal is a comment at the end. */
import { DIGEST, digestOf, type Kind } from '../../saved/seal/digest.ts';

/** What the writers leave near the beginning of a page, a paper or a picture. */
const MARK = /coilfeed-(?:page|kit|picture)/;
/** Title and description may be long [character]. */
const LOOKED_AT = 64 * 1024;
const SEAL = new RegExp(`<!-- coilfeed (${DIGEST}) -->\\n$`);

export const markup: Kind = {
  async seal(bytes) {
    return new TextEncoder().encode(
      `${new TextDecoder().decode(bytes)}<!-- coilfeed ${await digestOf(bytes)} -->\n`,
    );
  },
  async state(bytes) {
    const text = new TextDecoder().decode(bytes);
    const seal = SEAL.exec(text);
    if (seal !== null && (await digestOf(text.slice(0, seal.index))) === seal[1]) return 'as made';
    return seal !== null || MARK.test(text.slice(0, LOOKED_AT)) ? 'edited' : 'foreign';
  },
};
