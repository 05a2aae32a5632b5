/** Pieces of XML, written as text: the parts of a workbook are small and their order is fixed by the format. */

export const MAIN = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main';
export const OFFICE = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';
export const HEAD = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n';

const ENTITIES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };

/** A text as content or as the value of an attribute. */
export const escaped = (text: string): string =>
  /[&<>"]/.test(text) ? text.replace(/[&<>"]/g, (sign) => ENTITIES[sign] as string) : text;

/** An element whose text keeps the spaces and line ends that it has. */
export const textElement = (name: string, text: string): string =>
  `<${name}${/^\s|\s$|[\r\n\t]/.test(text) ? ' xml:space="preserve"' : ''}>${escaped(text)}</${name}>`;
