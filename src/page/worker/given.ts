/** The design that the page has open, read with the shop's file beside it. */
import { type ReadResult, readDesign } from '../../design/read.ts';
import type { Given } from '../protocol.ts';

/** A page knows no folders: in what is wrong a shop's file of the same name as the design is told apart from it. */
export function readGiven({ text, file, shop }: Given): ReadResult {
  const beside = shop?.file === file ? { ...shop, file: `./${file}` } : shop;
  return readDesign(text, file, beside ?? undefined);
}
