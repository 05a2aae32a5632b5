/** What comes of a value of the author’s own. */
import type { Design, OwnRow } from '../design/design.ts';

export interface OwnFound extends OwnRow {
  /** Null where it comes to an error, which `error` then is. */
  readonly value: number | string | null;
  readonly error: string | null;
  /** Null for a value without a rule. */
  readonly verdict: 'pass' | 'fail' | 'unknown' | null;
}

/** Whether a design has rules of the author’s own, which count in its verdict. */
export const hasRules = ({ own }: Pick<Design, 'own'>): boolean => own.some(({ sense }) => sense !== null);

/** Whether a design has anything of the kind; what evaluates it is loaded only then. */
export const hasOwn = ({ own, added }: Pick<Design, 'own' | 'added'>): boolean =>
  own.length > 0 || added.size > 0;
