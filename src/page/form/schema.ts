/** Which kind of field each part of the design's schema is. */
import type { Schema } from '../protocol.ts';

export type FieldKind =
  /** A value with its unit, a size, a name: text. */
  | { readonly kind: 'text' }
  | { readonly kind: 'number' }
  | { readonly kind: 'choice'; readonly words: readonly (string | number)[] }
  /** Numbers or names with commas between; `words` may stand for the whole list. */
  | { readonly kind: 'series'; readonly words: readonly string[] }
  /** A value, or a table or a map of values in its place. */
  | { readonly kind: 'either'; readonly single: Schema; readonly several: Schema }
  | { readonly kind: 'map'; readonly of: Schema }
  | { readonly kind: 'group'; readonly fields: readonly Named[] }
  | { readonly kind: 'list'; readonly of: Schema };

export interface Named {
  readonly key: string;
  readonly schema: Schema;
  readonly required: boolean;
}

/** The map among the alternatives of a part; a word may stand in its place. */
const groupOf = (schema: Schema): Schema | undefined =>
  [schema, ...(schema.anyOf ?? [])].find((one) => one.properties);

export function fieldsOf(schema: Schema): Named[] {
  const group = groupOf(schema);
  return Object.entries(group?.properties ?? {}).map(([key, inner]) => ({
    key,
    schema: inner,
    required: group?.required?.includes(key) ?? false,
  }));
}

const isMap = (schema: Schema): boolean => typeof schema.additionalProperties === 'object';
const isTable = (schema: Schema): boolean =>
  schema.type === 'array' && schema.items?.properties !== undefined;

const isNumber = ({ type }: Schema): boolean => type === 'integer' || type === 'number';

/** Where a value may also be a part of the shop's file by its name, `{ use: NAME }`, the field is that of the value. */
function withoutUse(schema: Schema): Schema {
  const isUse = ({ properties }: Schema): boolean =>
    properties !== undefined && Object.keys(properties).join() === 'use';
  const rest = schema.anyOf?.filter((one) => !isUse(one));
  if (rest === undefined || rest.length === schema.anyOf?.length) return schema;
  const [only] = rest;
  return rest.length === 1 && only ? { ...only, ...about(schema) } : { ...schema, anyOf: rest };
}

const about = ({ description, default: taken }: Schema): Schema => ({
  ...(description === undefined ? {} : { description }),
  ...(taken === undefined ? {} : { default: taken }),
});

/** What fields of this part look like. */
export function kindOf(given: Schema): FieldKind {
  const schema = withoutUse(given);
  const { anyOf } = schema;
  if (groupOf(schema)) return { kind: 'group', fields: fieldsOf(schema) };
  if (anyOf) {
    const several = anyOf.find((one) => isTable(one) || isMap(one));
    const single = anyOf.find((one) => one !== several);
    if (several && single) return { kind: 'either', single, several };
    if (anyOf.some((one) => one.type === 'array'))
      return { kind: 'series', words: anyOf.flatMap((one) => one.enum ?? []).map(String) };
    // A word, such as unknown, may stand in the place of the number.
    return anyOf.some(isNumber) ? { kind: 'number' } : { kind: 'text' };
  }
  if (isMap(schema)) return { kind: 'map', of: schema.additionalProperties as Schema };
  if (isTable(schema)) return { kind: 'list', of: schema.items as Schema };
  if (schema.type === 'array') return { kind: 'series', words: [] };
  if (schema.enum) return { kind: 'choice', words: schema.enum };
  return isNumber(schema) ? { kind: 'number' } : { kind: 'text' };
}
