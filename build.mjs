/**
 * Builds the command line tool: `node build.mjs [OUTDIR]`, into dist/ when no folder is named.
 *
 * Every dependency is bundled, and what a command needs lies in chunks of its own that are loaded when that
 * command runs: `coilfeed help` reads a few kilobytes and starts about as fast as Node itself.
 */
import { chmodSync, existsSync, readFileSync, rmSync } from 'node:fs';
import { resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const here = (path) => fileURLToPath(new URL(path, import.meta.url));
const outdir = process.argv[2] ? resolve(process.argv[2]) : here('dist');
const { version } = JSON.parse(readFileSync(here('package.json'), 'utf8'));
const entries = ['src/cli.ts', 'src/make-docs.ts', 'src/bench.ts']
  .map(here)
  .filter((file) => existsSync(file));

// Chunks carry a hash in their names: without this, those of earlier builds would stay behind.
rmSync(outdir, { recursive: true, force: true });
await build({
  entryPoints: entries,
  outdir,
  bundle: true,
  splitting: true,
  format: 'esm',
  platform: 'node',
  target: 'node20',
  minify: true,
  // Names of functions and classes show up in messages and in stacks.
  keepNames: true,
  legalComments: 'eof',
  define: { COILFEED_VERSION: JSON.stringify(version) },
  // Some dependencies are CommonJS and call `require` for Node's own modules.
  banner: { js: "import{createRequire as __cr}from'node:module';const require=__cr(import.meta.url);" },
  chunkNames: 'chunks/[name]-[hash]',
  logLevel: 'warning',
});
chmodSync(resolve(outdir, 'cli.js'), 0o755);
