/** What openpyxl finds in a workbook: the most common reader of programs that handle .xlsx files by script. */
import { execFile } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { needPeer, PYTHON } from './peer.ts';

export interface Seen {
  sheets: string[];
  names: string[];
  /** By sheet: number of charts. */
  charts: Record<string, number>;
  /** Of the sheet Inputs: type of each validation, and the cells it holds for. */
  validations: { type: string; cells: string; formula: string; prompt: string }[];
  /** Cells of Inputs that are not locked. */
  unlocked: number;
  locked: Record<string, boolean>;
  printed: Record<string, { area: string; titles: string; paper: string; header: string; footer: string }>;
  frozen: Record<string, string | null>;
}

const SCRIPT = `
import json, sys, openpyxl
book = openpyxl.load_workbook(sys.argv[1])
names = book.defined_names
names = [n.name for n in names.definedName] if hasattr(names, 'definedName') else list(names)
inputs = book['Inputs']
print(json.dumps({
  'sheets': book.sheetnames,
  'names': names,
  'charts': {s.title: len(s._charts) for s in book},
  'validations': [{'type': v.type, 'cells': str(v.sqref), 'formula': str(v.formula1), 'prompt': v.prompt or ''} for v in inputs.data_validations.dataValidation],
  'unlocked': sum(1 for row in inputs.iter_rows() for c in row if not c.protection.locked),
  'locked': {s.title: bool(s.protection.sheet) and not s.protection.password for s in book},
  'printed': {s.title: {'area': str(s.print_area), 'titles': str(s.print_title_rows), 'paper': str(s.page_setup.paperSize), 'header': str(s.oddHeader.left.text) + '|' + str(s.oddHeader.right.text), 'footer': str(s.oddFooter.left.text) + '|' + str(s.oddFooter.right.text)} for s in book},
  'frozen': {s.title: s.freeze_panes for s in book},
}))
`;

export async function seen(xlsx: Uint8Array): Promise<Seen> {
  needPeer('python3-openpyxl');
  const folder = mkdtempSync(join(tmpdir(), 'coilfeed-openpyxl-'));
  try {
    const file = join(folder, 'book.xlsx');
    writeFileSync(file, xlsx);
    const { stdout } = await promisify(execFile)(PYTHON, ['-c', SCRIPT, file], {
      timeout: 300_000,
      maxBuffer: 16 * 1024 * 1024,
    });
    return JSON.parse(stdout) as Seen;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
