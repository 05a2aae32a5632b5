/** Text that any program can take as the words that they are. */

/** Most characters that a cell of a spreadsheet holds. */
export const LONGEST = 32767;

/** Without the control characters and half characters that neither XML nor a table can hold; tabs and line ends stay. */
export const plain = (text: string): string =>
  text
    .replace(/[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g, '\ufffd')
    // biome-ignore lint/suspicious/noControlCharactersInRegex: these are the ones to take out.
    .replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f\ufffe\uffff]/g, '');

/** Cut where a cell ends, between whole characters. */
export const cut = (text: string): string =>
  text.length <= LONGEST ? text : `${text.slice(0, LONGEST - 1).replace(/[\ud800-\udbff]$/, '')}…`;
