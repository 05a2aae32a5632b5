/**
 * Builds the page into one file: markup, style, the program of the page, and the program of its workers in compressed
 * parts. The command writes a copy of it with a design inside.
 */
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import { build } from 'vite';

const here = (path) => fileURLToPath(new URL(path, import.meta.url));
const read = (path) => readFileSync(here(path), 'utf8');

/** The demo designs, in the order in which the page offers them. */
const DEMOS = ['hill-climb-six', 'two-bank-v8', 'pair-four'];

/** The same as in build.mjs: HyperFormula's parser by plain constants, and its modules in one piece. */
const flatParser = (names) => ({
  name: 'flat-parser',
  enforce: 'pre',
  resolveId(id, _from) {
    if (id === 'chevrotain') return '\0flat';
    if (id !== 'real-chevrotain') return undefined;
    return this.resolve('chevrotain', here('node_modules/hyperformula/es/index.mjs'), { skipSelf: true });
  },
  load: (id) =>
    id === '\0flat'
      ? [
          "import * as all from 'real-chevrotain';",
          ...names.map((name) => `export const ${name} = all.${name};`),
        ].join('\n')
      : undefined,
});

/** The library that lays out the diagram is large and stands in a part of its own, which sets a global. */
const layoutApart = {
  name: 'layout-apart',
  enforce: 'pre',
  resolveId: (id) => (id === 'elkjs/lib/elk.bundled.js' ? '\0layout' : undefined),
  load: (id) => (id === '\0layout' ? 'export default globalThis.ELK;' : undefined),
};

/** One entry as one script, with the modules that went into it. */
async function bundle(entry, name, plugins) {
  const built = await build({
    configFile: false,
    root: here('.'),
    logLevel: 'warn',
    plugins,
    define: { 'process.env.NODE_ENV': '"production"' },
    oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
    build: {
      write: false,
      target: 'es2022',
      minify: true,
      lib: { entry: here(entry), formats: ['iife'], name },
    },
  });
  const [{ output }] = [built].flat();
  const { code, moduleIds } = output.find(({ type }) => type === 'chunk');
  return { code, moduleIds };
}

/** Licences of the packages that the page carries: their texts, as they ask for; the GPL is that of the page itself. */
function notices(moduleIds) {
  const names = new Set(['elkjs']);
  for (const id of moduleIds) {
    const name = /.*node_modules\/((?:@[^/]+\/)?[^/]+)\//.exec(id)?.[1];
    if (name) names.add(name);
  }
  return [...names]
    .sort()
    .map((name) => {
      const { version, license } = JSON.parse(read(`node_modules/${name}/package.json`));
      const title = `${name} ${version}, ${license}`;
      if (/GPL/.test(license)) return title;
      const file = readdirSync(here(`node_modules/${name}`)).find((one) => /^licen[cs]e/i.test(one));
      return file ? `${title}\n\n${read(`node_modules/${name}/${file}`).trim()}` : title;
    })
    .join('\n\n----\n\n')
    .replaceAll('-->', '- ->');
}

const packed = (text) => gzipSync(text, { level: 9 }).toString('base64');
const digest = (text) => `'sha256-${createHash('sha256').update(text).digest('base64')}'`;
const data = (value) => JSON.stringify(value).replaceAll('<', '\\u003c');

/** The text of the page. `names` are the parser's names that HyperFormula asks for. */
export async function page(names) {
  const [app, worker] = await Promise.all([
    bundle('src/page/main.tsx', 'coilfeedPage', []),
    bundle('src/page/worker/main.ts', 'coilfeedWorker', [flatParser(names), layoutApart]),
  ]);
  const style = read('src/page/style.css');
  const program = app.code.replaceAll('</script', '<\\/script').replaceAll('<!--', '<\\!--');
  const parts = {
    PROGRAM: program,
    STYLE: style,
    POLICY: [
      "default-src 'none'",
      `script-src ${digest(program)}`,
      `style-src ${digest(style)}`,
      'img-src data: blob:',
      'worker-src blob:',
      "base-uri 'none'",
      "form-action 'none'",
    ].join('; '),
    DEMOS: data(DEMOS.map((name) => ({ name: `${name}.yaml`, text: read(`workbooks/${name}.yaml`) }))),
    WORKER: packed(worker.code),
    NOTICES: notices([...app.moduleIds, ...worker.moduleIds]),
    LAYOUT: packed(read('node_modules/elkjs/lib/elk.bundled.js')),
  };
  // Each stands in the template so that an editor can read it: as a comment, as a text, or by itself.
  return read('src/page/index.html').replace(
    /\/\*%(\w+)%\*\/|"%(DEMOS)%"|%(\w+)%/g,
    (_, code, json, plain) => parts[code ?? json ?? plain],
  );
}
