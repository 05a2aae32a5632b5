/** Writes the pages under docs/ that are made from the declarations: `npm run docs`. */
import { writeFileSync } from 'node:fs';
import { designJsonSchemaText } from '../design/schema-json.ts';
import { quantitiesPage } from '../docs/quantities.ts';
import { rangesPage } from '../docs/ranges.ts';
import { resultPage } from '../docs/result.ts';
import { tablesPage } from '../docs/tables.ts';

const PAGES = {
  'quantities.md': quantitiesPage,
  'ranges.md': rangesPage,
  'tables.md': tablesPage,
  'result.md': resultPage,
  'design.schema.json': designJsonSchemaText,
};

for (const [name, page] of Object.entries(PAGES)) {
  const text = page();
  writeFileSync(`docs/${name}`, text);
  process.stdout.write(`docs/${name}: ${text.length} characters\n`);
}
