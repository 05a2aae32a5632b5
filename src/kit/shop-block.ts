/** Who made the papers: the shop, its contact, revision and date, on every one of them. */
import { escaped } from '../pictures/elements.ts';
import { name } from './html-text.ts';
import { type Job, shortDigest } from './job.ts';

const NOTHING = '______';

/** Who drew a drawing. */
export interface TitleBlock {
  readonly shop: string;
  readonly revision: string;
  readonly design: string;
}

const shopOf = ({ result }: Job) => result.evaluation.design.shop?.shop;

/** Name and contact as plain text, for drawings and labels; blanks where no shop's file says. */
export function shopText(job: Job): {
  readonly name: string;
  readonly contact: string;
  readonly revision: string;
} {
  const shop = shopOf(job);
  return {
    name: shop?.name ?? NOTHING,
    contact: shop?.contact ?? NOTHING,
    revision: shop?.revision ?? NOTHING,
  };
}

/** For a drawing. */
export function titleBlock(job: Job): TitleBlock {
  const { name: shop, contact, revision } = shopText(job);
  return { shop: `${shop}, ${contact}`, revision, design: shortDigest(job) };
}

/** At the head of a paper. */
export function shopHead(job: Job): string {
  const { date } = job.result.evaluation.design;
  const shop = shopOf(job);
  const said = (value: string | null | undefined): string =>
    value === null || value === undefined ? NOTHING : name(value);
  const logo = job.logo == null ? '' : `<img alt="" src="${escaped(job.logo)}">`;
  const address = (shop?.address ?? []).map((line) => `, ${name(line)}`).join('');
  return (
    `<div class="shop">${logo}<span><b>${said(shop?.name)}</b>${address}<br>Questions: ${said(shop?.contact)}</span>` +
    `<span>Revision ${said(shop?.revision)}, date ${said(date)}<br>Design <code>${shortDigest(job)}</code></span></div>`
  );
}

/** A longer text stands in the instructions alone, and other papers say so [characters]. */
const LONGEST = 240;

/** Conditions of the warranty; nothing where the shop says nothing of it. `whole`: of any length. */
export function warranty(job: Job, whole = false): string {
  const text = shopOf(job)?.warranty;
  if (text === undefined) return '';
  const said = whole || text.length <= LONGEST ? name(text) : 'see the instructions.';
  return `<p class="about terms">Warranty: ${said}</p>`;
}
