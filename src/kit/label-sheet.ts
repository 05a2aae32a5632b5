/** The labels on a sheet, for shops without a label printer. */
import { document, name, opening } from './html.ts';
import type { Job } from './job.ts';
import { labels } from './labels.ts';
import { warranty } from './shop-block.ts';

const STYLE = `
.sheet{display:grid;grid-template-columns:repeat(3,1fr);gap:2mm;margin-top:4mm}
.label{border:.2mm dashed #000;padding:1.5mm 2mm;min-height:13mm;break-inside:avoid;font-size:8pt;line-height:1.2}
.label b{display:block;font-size:10pt}
`;

export function labelSheet(job: Job): string {
  const cells = labels(job).map(
    ({ lines: [first = '', ...others] }) =>
      `<div class="label"><b>${name(first)}</b>${others.map(name).join('<br>')}</div>`,
  );
  const body = [
    opening('Labels', job),
    '<p>One set for one kit. Each end of a wire carries its own place first, then where the wire goes. Print on heat-shrink or cloth that withstands the heat where the wire lies; paper does not.</p>',
    `<div class="sheet">\n${cells.join('\n')}\n</div>`,
    warranty(job),
  ].join('\n');
  return document({ title: 'Labels', job, body, style: STYLE });
}
