/** The schemas for editors, from the same source as the reader. */
import * as z from 'zod';
import { DesignFile } from './schema.ts';
import { ShopFile } from './shop/schema.ts';

/** JSON Schema (draft 2020-12) of a file as an author writes it. Checks between fields are not in it. */
function jsonSchema(schema: z.ZodType, title: string): Record<string, unknown> {
  const made = z.toJSONSchema(schema, {
    target: 'draft-2020-12',
    io: 'input',
    override: ({ zodSchema, jsonSchema }) => {
      // The library drops the default of a field that is read into another type; ours are in the author's words.
      const preset = z.globalRegistry.get(zodSchema)?.default;
      if (typeof preset === 'string' || typeof preset === 'number') jsonSchema.default = preset;
      // What the shop's part states need not stand beside its name.
      const { required, properties } = jsonSchema;
      if (properties && Object.hasOwn(properties, 'use') && required && !required.includes('use')) {
        jsonSchema.anyOf = [{ required: ['use'] }, { required }];
        delete jsonSchema.required;
      }
    },
  });
  return { title, ...made };
}

const textOf = (schema: Record<string, unknown>): string => `${JSON.stringify(schema, null, 2)}\n`;

export const designJsonSchema = (): Record<string, unknown> => jsonSchema(DesignFile, 'coilfeed design');

/** Text of `docs/design.schema.json`. */
export const designJsonSchemaText = (): string => textOf(designJsonSchema());

/** Text of `docs/shop.schema.json`. */
export const shopJsonSchemaText = (): string => textOf(jsonSchema(ShopFile, 'coilfeed shop'));
