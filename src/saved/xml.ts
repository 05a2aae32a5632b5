/** The little of XML that the lists of a workbook need: tags of one name, their attributes and their text. */

export interface Tag {
  readonly attributes: ReadonlyMap<string, string>;
  /** Text up to the next tag. */
  readonly text: string;
}

const ENTITIES: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', apos: "'" };

const decoded = (text: string): string =>
  text.replace(/&(?:#x([0-9a-fA-F]{1,6})|#(\d{1,7})|(\w{2,4}));/g, (whole, hex, decimal, name) => {
    if (name !== undefined) return Object.hasOwn(ENTITIES, name) ? (ENTITIES[name] as string) : whole;
    const code = hex === undefined ? Number(decimal) : Number.parseInt(hex, 16);
    return code <= 0x10ffff ? String.fromCodePoint(code) : whole;
  });

/** Every tag of this name, in order, without regard to its prefix. In linear time. */
export function tagsOf(xml: string, name: string): Tag[] {
  const found: Tag[] = [];
  const begin = new RegExp(`<(?:[A-Za-z0-9_]{1,20}:)?${name}(?=[\\s/>])`, 'g');
  for (let match = begin.exec(xml); match !== null; match = begin.exec(xml)) {
    const end = xml.indexOf('>', begin.lastIndex);
    if (end < 0) break;
    const next = xml.indexOf('<', end);
    const inside = xml.slice(begin.lastIndex, end);
    const attributes = new Map<string, string>();
    for (const [, key = '', , value = ''] of inside.matchAll(/([\w:]{1,40})\s{0,9}=\s{0,9}(["'])(.*?)\2/gs))
      attributes.set(key, decoded(value));
    found.push({ attributes, text: decoded(xml.slice(end + 1, next < 0 ? end + 1 : next)) });
  }
  return found;
}
