/** Text of a person inside HTML and SVG. */

const SIGNS: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/** Signs of the markup are escaped; control and half characters, which no document may hold, become a mark. */
export const escaped = (text: string): string =>
  text
    .replace(/[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g, '\ufffd')
    // biome-ignore lint/suspicious/noControlCharactersInRegex: these are the ones to take out.
    .replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f\ufffe\uffff]/g, '\ufffd')
    .replace(/[&<>"']/g, (sign) => SIGNS[sign] as string);
