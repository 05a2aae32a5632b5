/** How everything that is shipped or run from here is put together: one bundler, one way. */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';

/** The folder of the project, ending in a slash. */
export const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const { version, dependencies } = JSON.parse(readFileSync(`${ROOT}package.json`, 'utf8'));

/** What HyperFormula asks of its parser. */
const PARSER = ['createToken', 'Lexer', 'tokenMatcher', 'EmbeddedActionsParser', 'EMPTY_ALT'];

/**
 * HyperFormula asks for the parser's functions by way of getters of a CommonJS module, some a million times in a run.
 * Bound once to plain constants they cost nothing.
 */
const flatParser = {
  name: 'flat-parser',
  enforce: 'pre',
  resolveId(id) {
    if (id === 'chevrotain') return '\0flat';
    if (id !== 'real-chevrotain') return undefined;
    return this.resolve('chevrotain', `${ROOT}node_modules/hyperformula/es/index.mjs`, { skipSelf: true });
  },
  load: (id) =>
    id === '\0flat'
      ? [
          "import * as all from 'real-chevrotain';",
          ...PARSER.map((name) => `export const ${name} = all.${name};`),
        ].join('\n')
      : undefined,
};

/** Bundles, and gives the files by name and the names of the packages that went into them. */
async function bundle({ plugins = [], build: how, ...settings }) {
  const built = await build({
    configFile: false,
    root: ROOT,
    logLevel: 'warn',
    plugins: [flatParser, ...plugins],
    ...settings,
    build: { write: false, ...how },
  });
  const chunks = [built].flat().flatMap(({ output }) => output.filter(({ type }) => type === 'chunk'));
  const inside = chunks.flatMap(({ moduleIds }) => moduleIds);
  return {
    files: new Map(chunks.map(({ fileName, code }) => [fileName, code])),
    packages: new Set(inside.flatMap((id) => /.*node_modules\/((?:@[^/]+\/)?[^/]+)\//.exec(id)?.[1] ?? [])),
  };
}

/** A script for the browser in one piece; what it exports hangs on the global `name`. */
export async function forBrowser(entry, name, plugins) {
  const { files, packages } = await bundle({
    plugins,
    define: { 'process.env.NODE_ENV': '"production"', COILFEED_VERSION: JSON.stringify(version) },
    oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
    build: { target: 'es2022', minify: true, lib: { entry: `${ROOT}${entry}`, formats: ['iife'], name } },
  });
  return { code: [...files.values()][0], packages };
}

/**
 * A program for Node. Only what package.json names as a dependency stays outside, since it brings machine code or
 * files. What is imported at need lies in chunks of its own: `coilfeed help` reads a few kilobytes and starts about
 * as fast as Node itself.
 */
export const forNode = (entry) =>
  bundle({
    define: { COILFEED_VERSION: JSON.stringify(version) },
    ssr: { noExternal: true, external: Object.keys(dependencies) },
    build: {
      ssr: `${ROOT}${entry}`,
      target: 'node20',
      rolldownOptions: {
        output: {
          entryFileNames: '[name].js',
          chunkFileNames: 'chunks/[name]-[hash].js',
          // Identifiers stay as they are: names of functions and classes show up in stacks.
          minify: { compress: true, mangle: false, codegen: { removeWhitespace: true } },
        },
      },
    },
  });
