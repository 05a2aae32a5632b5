/** By what a picture of ours is known again, so that it may be replaced: a mark inside the file. */

import { crc32 } from '../saved/archive.ts';

export const SVG_MARK = 'coilfeed-picture/1';

export const SIGNATURE = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];
/** Signature and the header, which comes first: length, name, 13 bytes, check. */
const HEADER_END = 8 + 4 + 4 + 13 + 4;

/** Puts the mark into a PNG, as the text chunk that names the program (PNG specification, tEXt). */
export function markedPng(png: Uint8Array): Uint8Array {
  const chunk = markChunk();
  const marked = new Uint8Array(png.length + chunk.length);
  marked.set(png.subarray(0, HEADER_END));
  marked.set(chunk, HEADER_END);
  marked.set(png.subarray(HEADER_END), HEADER_END + chunk.length);
  return marked;
}

const markChunk = (): Uint8Array => textChunk('Software', SVG_MARK);

/** A chunk of text under a keyword (PNG specification, tEXt). */
export function textChunk(keyword: string, text: string): Uint8Array {
  const data = new TextEncoder().encode(`tEXt${keyword}\0${text}`);
  const chunk = new Uint8Array(4 + data.length + 4);
  const view = new DataView(chunk.buffer);
  // The length counts neither itself nor name and check.
  view.setUint32(0, data.length - 4);
  chunk.set(data, 4);
  view.setUint32(4 + data.length, crc32(data));
  return chunk;
}
