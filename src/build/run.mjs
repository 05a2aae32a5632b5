/** Runs one of the scripts beside it that are written in TypeScript: `node src/build/run.mjs NAME [ARGUMENTS]`. */
import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { forNode, ROOT } from './bundle.mjs';

const [name] = process.argv.splice(2, 1);
const folder = `${ROOT}node_modules/.cache/coilfeed/${name}-${process.pid}`;
const { files } = await forNode(`src/build/${name}.ts`);
for (const [file, text] of files) {
  mkdirSync(dirname(join(folder, file)), { recursive: true });
  writeFileSync(join(folder, file), text);
}
process.on('exit', () => rmSync(folder, { recursive: true, force: true }));
await import(pathToFileURL(join(folder, `${name}.js`)));
