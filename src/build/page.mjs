/**
 * Builds the page into one file: markup, style, the program of the page, and the program of its workers in compressed
 * parts. The command writes a copy of it with a design inside.
 */
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import { ascii, forBrowser, forNode, inTwoParts, ROOT } from './bundle.mjs';
import { notices } from './licences.mjs';

const read = (path) => readFileSync(`${ROOT}${path}`, 'utf8');

/** The spreadsheet engine is large and stands in a part of its own, which sets a global. */
const sheetsApart = {
  name: 'sheets-apart',
  enforce: 'pre',
  resolveId: (id) => (id === 'hyperformula' ? '\0sheets' : undefined),
  load: (id) =>
    id === '\0sheets'
      ? 'export const { DetailedCellError, HyperFormula } = globalThis.coilfeedSheets ?? {};'
      : undefined,
};

const packed = (text) => gzipSync(text, { level: 9 }).toString('base64');
const digest = (text) => `'sha256-${createHash('sha256').update(text).digest('base64')}'`;
const data = (value) => ascii(JSON.stringify(value)).replaceAll('<', '\\u003c');

const SHOP = 'shop.yaml';

/** The demo designs: each of the folder, by name, with the shop's file beside it. */
const demos = () =>
  readdirSync(`${ROOT}workbooks`)
    .filter((name) => name.endsWith('.yaml') && name !== SHOP)
    .sort()
    .map((name) => ({
      file: name,
      text: read(`workbooks/${name}`),
      shop: { text: read(`workbooks/${SHOP}`), file: SHOP, as: SHOP },
    }));

/** What the forms are made from. */
async function form() {
  const { files } = await forNode('src/build/form.ts');
  const { formOf } = await import(`data:text/javascript,${encodeURIComponent([...files.values()][0])}`);
  return formOf();
}

/** The text of the page, and the names of the packages inside. */
export async function page() {
  const [app, worker, sheets] = await Promise.all([
    forBrowser('src/page/main.tsx', 'coilfeedPage'),
    inTwoParts('src/page/worker/main.ts', 'src/page/worker/late.ts', 'coilfeedWorker', [sheetsApart]),
    forBrowser('src/page/worker/sheets.ts', 'coilfeedSheets'),
  ]);
  const packages = new Set([...app.packages, ...worker.packages, ...sheets.packages]);
  // Without its comments and lines.
  const style = read('src/page/style.css')
    .replace(/\/\*[\s\S]*?\*\//g, '')
    .replace(/\s+/g, ' ');
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
    FORM: data(await form()),
    WORKER: packed(worker.early),
    LATE: packed(worker.late),
    SHEETS: packed(sheets.code),
    NOTICES: notices(packages).replaceAll('-->', '- ->'),
  };
  // Each stands in the template so that an editor can read it: as a comment, as a text, or by itself.
  const html = read('src/page/index.html').replace(
    /\/\*%(\w+)%\*\/|"%(DEMOS|FORM)%"|%(\w+)%/g,
    (_, code, json, plain) => parts[code ?? json ?? plain],
  );
  return { html, packages };
}
