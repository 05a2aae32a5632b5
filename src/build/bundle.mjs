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

const IN_BROWSER = {
  define: { 'process.env.NODE_ENV': '"production"', COILFEED_VERSION: JSON.stringify(version) },
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
};

/** A script for the browser in one piece; what it exports hangs on the global `name`. */
export async function forBrowser(entry, name) {
  const { files, packages } = await bundle({
    ...IN_BROWSER,
    build: { target: 'es2022', minify: true, lib: { entry: `${ROOT}${entry}`, formats: ['iife'], name } },
  });
  return { code: ascii([...files.values()][0]), packages };
}

/** What is imported at need is imported at once, so that nothing of it stands in a file of its own. */
const atOnce = {
  name: 'at-once',
  enforce: 'pre',
  transform(code, id) {
    if (!id.startsWith(`${ROOT}src/`)) return undefined;
    const needed = [];
    const now = code.replace(/const (\{[^}]*\}) = await import\((['"][^'"]+['"])\);/g, (_, names, from) => {
      needed.push(`import ${names} from ${from};`);
      return '';
    });
    return needed.length === 0 ? undefined : `${needed.join('')}${now}`;
  },
};

/**
 * A script for the browser in two parts: `late` runs behind `early`, whose modules it shares by way of the global `name`.
 * A module within a module would be an address of its own, which the page's policy refuses.
 */
export async function inTwoParts(early, late, name, plugins) {
  const { files, packages } = await bundle({
    ...IN_BROWSER,
    plugins: [atOnce, ...plugins],
    build: {
      target: 'es2022',
      minify: true,
      modulePreload: false,
      rolldownOptions: {
        input: { early: `${ROOT}${early}`, late: `${ROOT}${late}` },
        // What both need stands in the first, and not in a third file.
        preserveEntrySignatures: 'allow-extension',
        output: { entryFileNames: '[name].js' },
      },
    },
  });
  if (files.size !== 2) throw new Error(`${[...files.keys()].join()}: early.js and late.js were expected`);
  const part = (file) => {
    const names = (list) => list.split(',').map((one) => one.split(' as '));
    const code = files
      .get(file)
      .replace(
        /import\{([^}]*)\}from"\.\/early\.js";/g,
        (_, list) =>
          `const{${names(list).map(([theirs, own = theirs]) => `${theirs}:${own}`)}}=globalThis.${name};`,
      )
      .replace(/import"\.\/early\.js";/g, '')
      .replace(
        /export\{([^}]*)\};\s*$/,
        (_, list) => `globalThis.${name}={${names(list).map(([own, theirs = own]) => `${theirs}:${own}`)}};`,
      );
    return ascii(`(()=>{"use strict";${code}})();`);
  };
  return { early: part('early.js'), late: part('late.js'), packages };
}

/**
 * A program in ASCII: the browser holds it with one byte for each letter, which it reads twice as fast. What stands in
 * raw templates cannot be written otherwise.
 */
export function ascii(code) {
  const raw = /String\.raw`[^`]*[^\0-\x7f][^`]*`/.exec(code);
  if (raw) throw new Error(`not in ASCII: ${raw[0]}`);
  return code.replace(/[^\0-\x7f]/g, (letter) => `\\u${letter.charCodeAt(0).toString(16).padStart(4, '0')}`);
}

/**
 * A program for Node. Only what package.json names as a dependency stays outside, since it brings machine code or
 * files; so does the browser's driver, which the figures of speed need. What is imported at need lies in chunks of its own: `coilfeed help` reads a few kilobytes and starts about
 * as fast as Node itself.
 */
export const forNode = (entry) =>
  bundle({
    define: { COILFEED_VERSION: JSON.stringify(version) },
    ssr: { noExternal: true, external: [...Object.keys(dependencies), 'playwright-core'] },
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
