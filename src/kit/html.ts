/** The shell of every paper: one file, black on white, made for A4 and Letter alike. */

import { printSize } from '../basis/print.ts';
import type { Finding } from '../findings/finding.ts';
import { heading, sentence } from '../findings/words.ts';
import { escaped } from '../pictures/elements.ts';
import { type Job, shortDigest } from './job.ts';
import { released } from './release.ts';

/** Text of a person: its direction is its own, so that it cannot turn what stands around it. */
export const name = (text: string): string => `<bdi>${escaped(text)}</bdi>`;

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
@page{margin:14mm 13mm 15mm}
@page wide{size:landscape;margin:10mm}
body{font:10pt/1.38 "DejaVu Sans",Verdana,Arial,sans-serif;color:#000;background:#fff;margin:0;overflow-wrap:break-word}
bdi,code{overflow-wrap:anywhere}
.blank,.size{white-space:nowrap}
h1{font-size:16pt;line-height:1.2;margin:0 0 2mm}
h2{font-size:12.5pt;margin:6mm 0 2mm;border-bottom:.4mm solid #000;break-after:avoid}
h3{font-size:10.5pt;margin:4mm 0 1mm;break-after:avoid}
p,ol,ul{margin:0 0 2mm}
ol,ul{padding-left:8mm}
li{margin-bottom:1.2mm;break-inside:avoid}
table{border-collapse:collapse;width:100%;margin:1mm 0 3mm;font-size:8.5pt;line-height:1.25}
thead{display:table-header-group}
tr{break-inside:avoid}
th,td{border:.2mm solid #000;padding:.8mm 1.2mm;text-align:left;vertical-align:top}
th{background:#e8e8e8;-webkit-print-color-adjust:exact;print-color-adjust:exact}
td:first-child{min-width:19mm}
td.n,th.n{text-align:right}
data{white-space:nowrap}
.about{font-size:8.5pt;margin-bottom:3mm}
.held{border:1mm solid #000;padding:2mm 3mm;margin:0 0 4mm;break-inside:avoid}
.held b{font-size:15pt;display:block}
.box{border:.4mm solid #000;padding:2mm 3mm 1mm;margin-bottom:3mm}
.box h2{margin-top:0}
.wide{page:wide;break-before:page;break-after:page}
.wide svg{display:block;width:100%;height:auto;max-height:184mm}
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

/** A whole document. */
export const document = ({ title, body, style = '', job }: Paper): string =>
  shell(`${title}: ${job.result.evaluation.design.title}`, body, style);

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

/** Title of a first page: what it is, of which design, and loudly when it is not to be built from. */
export const opening = (title: string, job: Job): string =>
  [
    `<h1>${escaped(title)}: ${name(job.result.evaluation.design.title)}</h1>`,
    `<p class="about">Made by coilfeed from the design ${dated(job)}with the digest <code>${shortDigest(job)}</code>.${
      released(job.result).ok ? ' All checks of the calculation pass.' : ''
    } A line ______ is something that the design does not say: fill it in before you build.</p>`,
    held(job),
  ].join('\n');

/** `of 2031-05-04 `, or nothing for a design without a date. */
const dated = ({ result }: Job): string => {
  const { date } = result.evaluation.design;
  return date === null ? '' : `of ${name(date)} `;
};

/** The notice of a design that fails or cannot be judged; nothing for one that passes. */
export function held({ result }: Job): string {
  const { ok, words, open } = released(result);
  if (ok) return '';
  const line = (f: Finding): string =>
    `<li>${escaped(`${f.verdict === 'fail' ? 'FAILS' : 'not known'} – ${heading(f)}: ${sentence(f, result.evaluation)}`)}</li>`;
  return `<div class="held"><b>${escaped(words)}</b>
Do not build, fit or sell from these papers. Correct the design first:
<ul>${open.map(line).join('\n')}</ul></div>`;
}

/** A table; cells are markup already. `numbers` are columns of numbers, at the right. */
export const table = (
  titles: readonly string[],
  rows: readonly (readonly string[])[],
  numbers: readonly number[] = [],
): string => {
  const cell = (tag: string, content: string, i: number): string =>
    `<${tag}${numbers.includes(i) ? ' class="n"' : ''}>${content}</${tag}>`;
  const head = titles.map((t, i) => cell('th', escaped(t), i)).join('');
  const body = rows.map((row) => `<tr>${row.map((c, i) => cell('td', c, i)).join('')}</tr>`).join('\n');
  return `<table><thead><tr>${head}</tr></thead><tbody>\n${body}\n</tbody></table>`;
};
