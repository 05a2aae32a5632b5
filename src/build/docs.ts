/** Writes the pages under docs/ that are made from the declarations, and the pictures of README.md: `npm run docs`. */
import { writeFileSync } from 'node:fs';
import { designJsonSchemaText, shopJsonSchemaText } from '../design/schema-json.ts';
import { quantitiesPage } from '../docs/quantities.ts';
import { rangesPage } from '../docs/ranges.ts';
import { resultPage } from '../docs/result.ts';
import { tablesPage } from '../docs/tables.ts';
import { shownPictures } from './shown.ts';

const PAGES = {
  'quantities.md': quantitiesPage,
  'ranges.md': rangesPage,
  'tables.md': tablesPage,
  'result.md': resultPage,
  'design.schema.json': designJsonSchemaText,
  'shop.schema.json': shopJsonSchemaText,
};

const texts = Object.entries(PAGES).map(([name, page]) => [name, page()] as const);
for (const [name, text] of [...texts, ...Object.entries(await shownPictures())]) {
  writeFileSync(`docs/${name}`, text);
  process.stdout.write(`docs/${name}: ${text.length} characters\n`);
}
