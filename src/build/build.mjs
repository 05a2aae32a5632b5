/**
 * Builds what users run, the tool and its page: `node src/build/build.mjs [OUTDIR] [--licences]`, into dist/ when no
 * folder is named; `--licences` prints what is shipped under which licence.
 */
import { chmodSync, mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { forNode, ROOT } from './bundle.mjs';
import { notices, shipped } from './licences.mjs';
import { page } from './page.mjs';

const { positionals, values } = parseArgs({
  allowPositionals: true,
  options: { licences: { type: 'boolean' } },
});
const outdir = resolve(positionals[0] ?? `${ROOT}dist`);
const [tool, { html, packages }] = await Promise.all([forNode('src/cli.ts'), page()]);
const list = shipped(new Set([...tool.packages, ...packages]));
const files = [...tool.files, ['page.html', html], ['licences.txt', `${notices(tool.packages)}\n`]];

// Only now, so that a build that fails leaves the last one alone. Chunks carry a hash in their names: without this,
// those of earlier builds would stay behind.
rmSync(outdir, { recursive: true, force: true });
for (const [name, text] of files) {
  mkdirSync(dirname(join(outdir, name)), { recursive: true });
  writeFileSync(join(outdir, name), text);
}
chmodSync(join(outdir, 'cli.js'), 0o755);
if (values.licences) process.stdout.write(`${list.join('\n')}\n`);
