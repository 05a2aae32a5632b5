/** Parts of a design that are not known. */
import type { Design } from './design.ts';

/** Why nothing is made of such a design; null where all parts are known. */
export const unknownIn = ({ unknowns }: Design): string | null =>
  unknowns.length === 0
    ? null
    : `${unknowns.map(({ path }) => path).join(', ')}: nothing can be sized or built around an unknown part.`;
