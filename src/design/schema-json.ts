/** The schema for editors, from the same source as the reader. */
import * as z from 'zod';
import { DesignFile } from './schema.ts';

/** JSON Schema (draft 2020-12) of the design file as an author writes it. Checks between fields are not in it. */
export function designJsonSchema(): Record<string, unknown> {
  const schema = z.toJSONSchema(DesignFile, {
    target: 'draft-2020-12',
    io: 'input',
    // The library drops the default of a field that is read into another type; ours are in the author's words.
    override: ({ zodSchema, jsonSchema }) => {
      const preset = z.globalRegistry.get(zodSchema)?.default;
      if (typeof preset === 'string' || typeof preset === 'number') jsonSchema.default = preset;
    },
  });
  return { title: 'coilfeed design', ...schema };
}

/** Text of `docs/design.schema.json`. */
export const designJsonSchemaText = (): string => `${JSON.stringify(designJsonSchema(), null, 2)}\n`;
