/** Between what stands in a field and what stands in the design's text. */
import { readOrder } from '../../design/spellings.ts';
import type { Plain } from '../../saved/document.ts';
import type { FieldKind } from './schema.ts';

/** A value of the design as its field shows it. */
export function asTyped(value: unknown): string {
  if (value === undefined || value === null) return '';
  if (Array.isArray(value)) return value.map(asTyped).join(', ');
  return typeof value === 'object' ? '' : String(value);
}

const NUMBER = /^[+-]?\d+(\.\d+)?$/;
const plain = (word: string): Plain => (NUMBER.test(word) ? Number(word) : word);

/**
 * What is typed, as the design's text takes it; undefined for an empty field, which takes the key out. What is wrong
 * goes into the text as it is, so that the reader says what is wrong with it, here and on the command line alike.
 */
export function asWritten(typed: string, { kind, ...rest }: FieldKind): Plain | undefined {
  const text = typed.trim();
  if (text === '') return undefined;
  if (kind === 'number' || (kind === 'choice' && 'words' in rest && typeof rest.words[0] === 'number'))
    return plain(text);
  if (kind !== 'series') return text;
  if ('words' in rest && rest.words.includes(text)) return text;
  const order = readOrder(text);
  if (order !== null) return order;
  return text
    .split(',')
    .map((word) => word.trim())
    .filter((word) => word !== '')
    .map(plain);
}
