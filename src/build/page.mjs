/**
 * Builds the page into one file: markup, style, the program of the page, and the program of its workers in compressed
 * parts. The command writes a copy of it with a design inside.
 */
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import { forBrowser, ROOT } from './bundle.mjs';
import { notices } from './licences.mjs';

const read = (path) => readFileSync(`${ROOT}${path}`, 'utf8');

/** Large libraries that only one job needs stand in parts of their own, which set a global. */
const APART = {
  'elkjs/lib/elk.bundled.js': 'export default globalThis.ELK;',
  hyperformula: 'export const { DetailedCellError, HyperFormula } = globalThis.coilfeedSheets ?? {};',
};
const apart = {
  name: 'apart',
  enforce: 'pre',
  resolveId: (id) => (Object.hasOwn(APART, id) ? `\0${id}` : undefined),
  load: (id) => APART[id.slice(1)],
};

const packed = (text) => gzipSync(text, { level: 9 }).toString('base64');
const digest = (text) => `'sha256-${createHash('sha256').update(text).digest('base64')}'`;
const data = (value) => JSON.stringify(value).replaceAll('<', '\\u003c');

/** The demo designs: each of the folder, by name. */
const demos = () =>
  readdirSync(`${ROOT}workbooks`)
    .filter((name) => name.endsWith('.yaml'))
    .sort()
    .map((name) => ({ name, text: read(`workbooks/${name}`) }));

/** The text of the page, and the names of the packages inside. */
export async function page() {
  const [app, worker, sheets] = await Promise.all([
    forBrowser('src/page/main.tsx', 'coilfeedPage'),
    forBrowser('src/page/worker/main.ts', 'coilfeedWorker', [apart]),
    forBrowser('src/page/worker/sheets.ts', 'coilfeedSheets'),
  ]);
  const packages = new Set([...app.packages, ...worker.packages, ...sheets.packages, 'elkjs']);
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
    DEMOS: data(demos()),
    WORKER: packed(worker.code),
    SHEETS: packed(sheets.code),
    NOTICES: notices(packages).replaceAll('-->', '- ->'),
    LAYOUT: packed(read('node_modules/elkjs/lib/elk.bundled.js')),
  };
  // Each stands in the template so that an editor can read it: as a comment, as a text, or by itself.
  const html = read('src/page/index.html').replace(
    /\/\*%(\w+)%\*\/|"%(DEMOS)%"|%(\w+)%/g,
    (_, code, json, plain) => parts[code ?? json ?? plain],
  );
  return { html, packages };
}
