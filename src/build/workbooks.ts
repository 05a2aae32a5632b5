/** Writes the workbook beside each demo design: `npm run workbooks`. */
import { readdirSync } from 'node:fs';
import { run } from '../commands/size.ts';

for (const name of readdirSync('workbooks').filter((file) => file.endsWith('.yaml') && file !== 'shop.yaml'))
  await run([`workbooks/${name}`, '--out', `workbooks/${name.replace('.yaml', '.xlsx')}`, '--force']);
