/**
 * What is valid of a design, however much of the rest is not: so that the checks between fields can speak about the
 * good parts while the schema complains about the others.
 */
import * as z from 'zod';
import { alternatives } from './issues.ts';
import type { DesignFile } from './schema.ts';

/** Every key and every member of a list may be missing. */
export type Partially<T> = T extends readonly (infer M)[]
  ? (Partially<M> | undefined)[]
  : T extends object
    ? { [K in keyof T]?: Partially<T[K]> | undefined }
    : T;

export type Draft = Partially<DesignFile>;

const isMap = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** The valid parts of `value`, in the schema's output; undefined when there are none. */
export function salvage(schema: z.core.$ZodType, value: unknown): unknown {
  if (value === undefined) return undefined;
  const whole = z.safeParse(schema, value);
  if (whole.success) return whole.data;
  for (const one of alternatives(schema)) {
    if (one instanceof z.ZodObject && isMap(value))
      return Object.fromEntries(
        Object.entries(one.shape).map(([key, inner]) => [
          key,
          salvage(inner as z.core.$ZodType, Object.hasOwn(value, key) ? value[key] : undefined),
        ]),
      );
    if (one instanceof z.ZodArray && Array.isArray(value))
      return value.map((item) => salvage(one.element, item));
    if (one instanceof z.ZodRecord && isMap(value)) {
      const out: Record<string, unknown> = Object.create(null);
      for (const [key, inner] of Object.entries(value)) out[key] = salvage(one.valueType, inner);
      return out;
    }
  }
  return undefined;
}

/** The draft of a file. A part that could not be read is undefined; whether it was given, the tree knows. */
export const draftOf = (schema: typeof DesignFile, value: unknown): Draft =>
  (salvage(schema, value) ?? {}) as Draft;
