/** What the notes beside the inputs are kept by: the name of the input, and of the member where the row is that of one. */
import type { QuantityName } from '../model/model.ts';
import { INPUT_GROUPS } from './input-groups.ts';

/** Name of the row of an input; `member` is the one whose row it is, empty where the row is that of the input. */
export const remarkName = (name: QuantityName, member = ''): string =>
  member === '' ? name : `${name} ${member}`;

/** Of the inputs that stand beside each other in the row of one member the first names it. */
export const namesRow = (name: QuantityName): boolean =>
  INPUT_GROUPS.some(({ inputs }) => inputs[0] === name);
