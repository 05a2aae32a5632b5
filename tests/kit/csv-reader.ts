/** A reader of comma-separated text that goes by RFC 4180 and nothing else; throws on what it does not allow. */
export function readCsv(text: string): string[][] {
  if (!text.endsWith('\r\n')) throw new Error('the last row does not end');
  const rows: string[][] = [];
  let row: string[] = [];
  let at = 0;
  while (at < text.length) {
    let cell = '';
    if (text[at] === '"') {
      at += 1;
      for (;;) {
        const end = text.indexOf('"', at);
        if (end < 0) throw new Error('a quote that does not end');
        cell += text.slice(at, end);
        at = end + 1;
        if (text[at] !== '"') break;
        cell += '"';
        at += 1;
      }
    } else {
      const end = /[,\r\n"]/.exec(text.slice(at));
      if (end === null || end[0] === '"') throw new Error('a quote inside a plain cell');
      cell = text.slice(at, at + end.index);
      at += end.index;
    }
    row.push(cell);
    if (text[at] === ',') at += 1;
    else if (text.slice(at, at + 2) === '\r\n') {
      at += 2;
      rows.push(row);
      row = [];
    } else throw new Error(`a cell that ends in ${JSON.stringify(text.slice(at, at + 5))}`);
  }
  return rows;
}
