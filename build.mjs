/**
 * Builds the command line tool: `node build.mjs [OUTDIR]`, into dist/ when no folder is named.
 *
 * Every dependency is bundled, and what a command needs lies in chunks of its own that are loaded when that
 * command runs: `coilfeed help` reads a few kilobytes and starts about as fast as Node itself.
 */
import { chmodSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { page } from './build-page.mjs';

const here = (path) => fileURLToPath(new URL(path, import.meta.url));
const outdir = process.argv[2] ? resolve(process.argv[2]) : here('dist');
const { version } = JSON.parse(readFileSync(here('package.json'), 'utf8'));

/** What HyperFormula asks of its parser. */
const PARSER = ['createToken', 'Lexer', 'tokenMatcher', 'EmbeddedActionsParser', 'EMPTY_ALT'];

/**
 * HyperFormula asks for the parser's functions by way of getters of a CommonJS module, some a million times in a run.
 * Bound once to plain constants they cost nothing.
 */
const flatParser = {
  name: 'flat-parser',
  setup(on) {
    on.onResolve({ filter: /^chevrotain$/ }, ({ pluginData }) =>
      pluginData === 'real' ? undefined : { path: 'chevrotain', namespace: 'flat' },
    );
    on.onResolve({ filter: /^real-chevrotain$/, namespace: 'flat' }, ({ resolveDir }) =>
      on.resolve('chevrotain', { resolveDir, kind: 'import-statement', pluginData: 'real' }),
    );
    on.onLoad({ filter: /./, namespace: 'flat' }, () => {
      const lines = PARSER.map((name) => `export const ${name} = all.${name};`);
      return {
        contents: `import * as all from 'real-chevrotain';\n${lines.join('\n')}`,
        resolveDir: here('.'),
      };
    });
  },
};

const settings = {
  outdir,
  bundle: true,
  format: 'esm',
  platform: 'node',
  target: 'node20',
  // Identifiers stay as they are: names of functions and classes show up in stacks, and to give shortened ones their
  // names back costs time whenever a function is made.
  minifyWhitespace: true,
  minifySyntax: true,
  plugins: [flatParser],
  // ExcelJS brings a reader of zip files that can fetch them from a cloud: never called here, and not installed.
  // What draws PNG is machine code and stays in its package; so does the canvas that vega would take if it were there.
  external: ['@resvg/resvg-js', 'canvas'],
  legalComments: 'eof',
  define: { COILFEED_VERSION: JSON.stringify(version) },
  // Some dependencies are CommonJS and call `require` for Node's own modules.
  banner: { js: "import{createRequire as __cr}from'node:module';const require=__cr(import.meta.url);" },
  chunkNames: 'chunks/[name]-[hash]',
  logLevel: 'warning',
  write: false,
};
const pageText = page(PARSER);
const built = [
  await build({ ...settings, entryPoints: [here('src/cli.ts')], splitting: true }),
  // In one piece each. HyperFormula's modules import each other in circles; in a chunk that several entries share the
  // bundler puts them into an order in which they do not start.
  await build({ ...settings, entryPoints: [here('src/make-docs.ts'), here('src/bench.ts')] }),
];
const html = await pageText;
// Only now, so that a build that fails leaves the last one alone. Chunks carry a hash in their names: without this,
// those of earlier builds would stay behind.
rmSync(outdir, { recursive: true, force: true });
for (const { path, contents } of built.flatMap(({ outputFiles }) => outputFiles)) {
  mkdirSync(dirname(path), { recursive: true });
  writeFileSync(path, contents);
}
writeFileSync(resolve(outdir, 'page.html'), html);
chmodSync(resolve(outdir, 'cli.js'), 0o755);
