/** Text that any spreadsheet program can take. */

/** Most characters that a cell holds. */
export const LONGEST = 32767;

/**
 * Without the control characters and half characters that a workbook cannot hold, and cut where a cell ends.
 * A part that looks like the format's own way of writing a character (`_x0041_`) is kept as it is.
 */
export function clean(text: string): string {
  const plain = text
    .replace(/[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g, '\ufffd')
    // biome-ignore lint/suspicious/noControlCharactersInRegex: these are the ones to take out.
    .replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f\ufffe\uffff]/g, '')
    .replace(/_(?=x[0-9A-Fa-f]{4}_)/g, '_x005F_');
  if (plain.length <= LONGEST) return plain;
  return `${plain.slice(0, LONGEST - 1).replace(/[\ud800-\udbff]$/, '')}…`;
}
