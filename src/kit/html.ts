/** The shell of every paper: one file, black on white, made for A4 and Letter alike. */

import { printSize } from '../basis/print.ts';
import { heading, sentence } from '../findings/words.ts';
import { escaped } from '../pictures/elements.ts';
import { ownText } from '../writers/report.ts';
import { cssText, name } from './html-text.ts';
import { type Job, shortDigest } from './job.ts';
import { released } from './release.ts';
import { shopHead, shopText } from './shop-block.ts';

export { name };

/** A size of conductor, which is a name with figures in it. */
export const sizeName = (gauge: string | null): string =>
  gauge === null
    ? '<span class="blank">______</span>'
    : `<bdi class="size">${escaped(printSize(gauge))}</bdi>`;

/**
 * No size of paper is named: the printer's own is taken, lying where a page is `wide`. Rows stay whole and headings
 * stay with what they head.
 */
const STYLE = `
:root{color-scheme:light}
*{box-sizing:border-box}
@page{margin:14mm 12mm 13mm}
@page wide{size:landscape;margin:10mm;@top-left{vertical-align:bottom}@top-right{vertical-align:bottom}@bottom-left{vertical-align:top}@bottom-right{vertical-align:top}}
body{font:9pt/1.3 "DejaVu Sans",Verdana,Arial,sans-serif;color:#000;background:#fff;margin:0;overflow-wrap:break-word}
bdi,code{overflow-wrap:anywhere}
.blank,.size,.whole,.whole bdi{white-space:nowrap}
.shop{display:flex;justify-content:space-between;gap:5mm;font-size:8pt;line-height:1.25;margin-bottom:2mm}
.shop img{max-height:11mm;max-width:35mm}
h1{font-size:14pt;line-height:1.15;margin:0 0 1.5mm}
h2{font-size:11pt;margin:4mm 0 1.5mm;border-bottom:.4mm solid #000;break-after:avoid}
h3{font-size:9.5pt;margin:2.5mm 0 .8mm;break-after:avoid}
p,ol,ul{margin:0 0 1.5mm}
ol,ul{padding-left:6mm}
li{margin-bottom:.7mm;break-inside:avoid}
table{border-collapse:collapse;width:100%;margin:1mm 0 2.5mm;font-size:8pt;line-height:1.2}
thead{display:table-header-group}
tr{break-inside:avoid}
th,td{border:.2mm solid #000;padding:.6mm 1mm;text-align:left;vertical-align:top}
th{background:#e8e8e8;-webkit-print-color-adjust:exact;print-color-adjust:exact}
td.n,th.n{text-align:right}
data{white-space:nowrap}
.about{font-size:8pt;margin-bottom:2mm}
.terms{white-space:pre-line;margin-top:2mm}
.held{border:1mm solid #000;padding:1.5mm 3mm;margin:0 0 3mm;break-inside:avoid}
.held b{font-size:13pt;display:block}
.box{border:.4mm solid #000;padding:2mm 3mm 1mm;margin-bottom:3mm}
.box h2{margin-top:0}
.box ul,.two{columns:2;column-gap:6mm}
.wide{page:wide;break-before:page;break-after:page}
.wide svg{display:block;width:100%;height:auto;max-height:189mm}
.page{break-after:page}
.page:last-child{break-after:auto}
@media screen{body{padding:8mm;margin:0 auto;max-width:200mm}}
`;

export interface Paper {
  readonly title: string;
  readonly job: Job;
  readonly body: string;
  /** More rules of style. */
  readonly style?: string;
}

/** A running head and the number of the page; a design that must not be built says so on every page. */
function running(title: string, job: Job): string {
  const { design } = job.result.evaluation;
  const { ok, words } = released(job.result);
  const { name: shop, revision } = shopText(job);
  const cut = (text: string, most: number): string =>
    text.length > most ? `${text.slice(0, most)} …` : text;
  const text = 'font:8pt "DejaVu Sans",Verdana,Arial,sans-serif';
  return `@page{@top-left{content:${cssText(`${title}: ${cut(design.title, 60)}`)};${text}}
@top-right{content:${ok ? '""' : cssText(words)};font:bold 8.5pt "DejaVu Sans",Verdana,Arial,sans-serif}
@bottom-left{content:${cssText(`${cut(shop, 40)} · revision ${cut(revision, 20)} · ${design.date ?? 'date ______'} · design ${shortDigest(job)}`)};${text}}
@bottom-right{content:"page " counter(page) " of " counter(pages);${text}}}
`;
}

/** A whole document. */
export const document = ({ title, body, style = '', job }: Paper): string =>
  shell(`${title}: ${job.result.evaluation.design.title}`, body, running(title, job) + style);

/** The same by its whole title. */
export const shell = (title: string, body: string, style: string): string => `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="generator" content="coilfeed-kit">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escaped(title)}</title>
<style>${STYLE}${style}</style>
</head>
<body>
${body}
</body>
</html>
`;

/** Title of a first page: whose it is, what it is, of which design, and loudly when it is not to be built from. */
export const opening = (title: string, job: Job): string =>
  [
    shopHead(job),
    `<h1>${escaped(title)}: ${name(job.result.evaluation.design.title)}</h1>`,
    held(job),
    '<p class="about">A line ______ is something that the design does not say: fill it in before you go on.</p>',
  ].join('\n');

/** The notice of a design that fails or cannot be judged; nothing for one that passes. */
export function held({ result }: Job): string {
  const { ok, words, open, broken } = released(result);
  if (ok) return '';
  const line = (verdict: string | null, text: string): string =>
    `<li>${escaped(`${verdict === 'fail' ? 'FAILS' : 'not known'} – ${text}`)}</li>`;
  const lines = [
    ...open.map((f) => line(f.verdict, `${heading(f)}: ${sentence(f, result.evaluation)}`)),
    ...broken.map((one) => line(one.verdict, `the author’s own rule: ${ownText(one)}`)),
  ];
  return `<div class="held"><b>${escaped(words)}</b>
Do not build, fit or sell from these papers. Correct the design first:
<ul>${lines.join('\n')}</ul></div>`;
}

/** Longest name of a wire that is never broken: the page is not as wide as the longest that is allowed [characters]. */
const LONGEST_WHOLE = 22;

/** The name of a wire where it heads a row. */
export const wireName = (id: string): string =>
  `<b${id.length > LONGEST_WHOLE ? '' : ' class="whole"'}>${name(id)}</b>`;

/** A table; cells are markup already. `numbers` are columns of numbers, at the right; `kind` is its class. */
export const table = (
  titles: readonly string[],
  rows: readonly (readonly string[])[],
  numbers: readonly number[] = [],
  kind = '',
): string => {
  const cell = (tag: string, content: string, i: number): string =>
    `<${tag}${numbers.includes(i) ? ' class="n"' : ''}>${content}</${tag}>`;
  const head = titles.map((t, i) => cell('th', escaped(t), i)).join('');
  const body = rows.map((row) => `<tr>${row.map((c, i) => cell('td', c, i)).join('')}</tr>`).join('\n');
  return `<table${kind === '' ? '' : ` class="${kind}"`}><thead><tr>${head}</tr></thead><tbody>\n${body}\n</tbody></table>`;
};
