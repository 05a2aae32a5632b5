/**
 * A zip archive from outside, opened with care: what its directory promises is checked before anything is unpacked,
 * and no part is ever unpacked beyond what it promised. Nothing is unpacked that nobody asked for.
 */
import { inflateSync, strFromU8 } from 'fflate';

/** More parts than any workbook of ours has, some 60. */
const MOST_PARTS = 2000;
/** All parts unpacked [byte]; the largest workbook of ours has about 10 MB. */
const MOST_UNPACKED = 64 * 1024 * 1024;

const END = 0x06054b50;
const END_LENGTH = 22;
const LONGEST_COMMENT = 0xffff;
const CENTRAL = 0x02014b50;
const CENTRAL_LENGTH = 46;
const LOCAL = 0x04034b50;
const LOCAL_LENGTH = 30;
const STORED = 0;
const DEFLATED = 8;
const ENCRYPTED = 1;

interface Part {
  readonly flags: number;
  readonly method: number;
  readonly crc: number;
  readonly packed: number;
  readonly size: number;
  readonly local: number;
}

export interface Archive {
  /** What the directory says of each part: its length unpacked [byte], and its CRC-32. */
  readonly parts: readonly { readonly name: string; readonly size: number; readonly crc: number }[];
  has(name: string): boolean;
  /** The part unpacked; a sentence's end, "is …", when that cannot be done or it is larger than `most` bytes. */
  read(name: string, most: number): Uint8Array | string;
}

/** Opens an archive, or says what is wrong with it, as the end of a sentence. Never throws. */
export function openArchive(bytes: Uint8Array): Archive | string {
  try {
    const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
    const parts = directory(bytes, view);
    if (typeof parts === 'string') return parts;
    return {
      parts: [...parts].map(([name, { size, crc }]) => ({ name, size, crc })),
      has: (name) => parts.has(name),
      read(name, most) {
        const part = parts.get(name);
        if (part === undefined) return `has no part ${name}`;
        if (part.size > most) return `has a part ${name} of ${Math.ceil(part.size / 1e6)} MB`;
        try {
          return unpack(bytes, view, part) ?? `has a damaged part ${name}`;
        } catch {
          // A view outside of the bytes, or a stream that cannot be unpacked.
          return `has a damaged part ${name}`;
        }
      },
    };
  } catch {
    return 'has a damaged directory';
  }
}

function directory(bytes: Uint8Array, view: DataView): Map<string, Part> | string {
  const end = endOf(view);
  if (end === null) return 'is cut off, or no archive at all';
  const count = view.getUint16(end + 10, true);
  if (count > MOST_PARTS) return `holds ${count} parts`;
  const parts = new Map<string, Part>();
  let at = view.getUint32(end + 16, true);
  let unpacked = 0;
  for (let i = 0; i < count; i++) {
    if (view.getUint32(at, true) !== CENTRAL) return 'has a damaged directory';
    const length = view.getUint16(at + 28, true);
    const name = strFromU8(bytes.subarray(at + CENTRAL_LENGTH, at + CENTRAL_LENGTH + length));
    // Readers differ in which of the two they take; that is how a file shows one thing and holds another.
    if (parts.has(name)) return 'holds a part twice';
    const size = view.getUint32(at + 24, true);
    unpacked += size;
    parts.set(name, {
      flags: view.getUint16(at + 8, true),
      method: view.getUint16(at + 10, true),
      crc: view.getUint32(at + 16, true),
      packed: view.getUint32(at + 20, true),
      size,
      local: view.getUint32(at + 42, true),
    });
    at += CENTRAL_LENGTH + length + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
  }
  return unpacked > MOST_UNPACKED ? `would unpack to ${Math.ceil(unpacked / 1e6)} MB` : parts;
}

/** Where the end of the directory stands: at the end of the file, with at most a comment behind it. */
function endOf(view: DataView): number | null {
  const last = view.byteLength - END_LENGTH;
  for (let at = last; at >= Math.max(0, last - LONGEST_COMMENT); at--)
    if (view.getUint32(at, true) === END) return at;
  return null;
}

/** Null when the part is not what the directory says of it. */
function unpack(bytes: Uint8Array, view: DataView, part: Part): Uint8Array | null {
  const { local, packed, size, method } = part;
  if ((part.flags & ENCRYPTED) !== 0 || view.getUint32(local, true) !== LOCAL) return null;
  const start = local + LOCAL_LENGTH + view.getUint16(local + 26, true) + view.getUint16(local + 28, true);
  const data = bytes.subarray(start, start + packed);
  if (data.length !== packed) return null;
  // What would not fit into the size that the directory states is dropped, so that nothing can swell.
  const out =
    method === STORED
      ? data
      : method === DEFLATED
        ? inflateSync(data, { out: new Uint8Array(size) })
        : new Uint8Array();
  return out.length === size && crc32(out) === part.crc ? out : null;
}

/**
 * An archive with another content of one part, stored without packing; all else stays as it is, byte for byte. The
 * archive is one of ours and sound. Throws when it has no such part.
 */
export function withPart(bytes: Uint8Array, name: string, content: Uint8Array): Uint8Array {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const end = endOf(view) as number;
  const parts = directory(bytes, view);
  const part = typeof parts === 'string' ? undefined : parts.get(name);
  if (typeof parts === 'string' || part === undefined) throw new Error(`no part ${name}`);
  const start = view.getUint32(end + 16, true);
  // Parts follow each other; each ends where the next one starts, or the directory.
  const next = Math.min(start, ...[...parts.values()].map((p) => p.local).filter((at) => at > part.local));
  // Copies: a slice of a Buffer would share its memory.
  const copied = (from: number, to: number): Uint8Array => new Uint8Array(bytes.subarray(from, to));
  const local = copied(part.local, part.local + LOCAL_LENGTH + view.getUint16(part.local + 26, true));
  stored(new DataView(local.buffer), 6, content);
  new DataView(local.buffer).setUint16(28, 0, true);
  const longer = local.length + content.length - (next - part.local);
  const rest = copied(start, bytes.length);
  const list = new DataView(rest.buffer);
  for (let at = 0, i = 0; i < parts.size; i++) {
    const place = list.getUint32(at + 42, true);
    if (place > part.local) list.setUint32(at + 42, place + longer, true);
    if (place === part.local) stored(list, at + 8, content);
    at +=
      CENTRAL_LENGTH +
      list.getUint16(at + 28, true) +
      list.getUint16(at + 30, true) +
      list.getUint16(at + 32, true);
  }
  list.setUint32(end - start + 16, start + longer, true);
  const out = new Uint8Array(bytes.length + longer);
  out.set(bytes.subarray(0, part.local));
  out.set(local, part.local);
  out.set(content, part.local + local.length);
  out.set(bytes.subarray(next, start), part.local + local.length + content.length);
  out.set(rest, start + longer);
  return out;
}

/** Writes flags, method, check sum and lengths of a stored part, which stand in the same order in both headers. */
function stored(header: DataView, at: number, content: Uint8Array): void {
  // What follows the data in place of these fields, and packing, are gone; how the name is written stays.
  header.setUint16(at, header.getUint16(at, true) & ~0x000e, true);
  header.setUint16(at + 2, STORED, true);
  header.setUint32(at + 8, crc32(content), true);
  header.setUint32(at + 12, content.length, true);
  header.setUint32(at + 16, content.length, true);
}

/** Table of the check sum that the format uses. */
const CRC = Uint32Array.from({ length: 256 }, (_, n) => {
  let c = n;
  for (let bit = 0; bit < 8; bit++) c = c & 1 ? 0xedb88320 ^ (c >>> 1) : c >>> 1;
  return c >>> 0;
});

export function crc32(bytes: Uint8Array): number {
  let c = 0xffffffff;
  for (let i = 0; i < bytes.length; i++) c = (CRC[(c ^ (bytes[i] as number)) & 0xff] as number) ^ (c >>> 8);
  return (c ^ 0xffffffff) >>> 0;
}
