/**
 * LibreOffice as a person uses it: opens workbooks, types, pastes, sorts, inserts, renames, looks at the first sheet, saves. A
 * macro in the profile does what a list of steps says, so that one process is enough for many edits of many workbooks.
 */
import { copyFileSync, existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { extname, join, resolve } from 'node:path';
import { office, profileWith } from './libreoffice.ts';

/** A cell as it is shown: a number or a text; null for an empty one. */
export type Shown = number | string | null;

/** One step; sheets by their name at that moment, ranges as `D5` or `D5:E9`. */
export type Step =
  /** Types into a cell, as in an English program: what looks like a number or a formula becomes one. */
  | readonly ['type', sheet: string, cell: string, text: string]
  /** Puts text into a cell, whatever it looks like. */
  | readonly ['text', sheet: string, cell: string, text: string]
  /** Empties cells; their formats stay. */
  | readonly ['clear', sheet: string, range: string]
  /** Copies cells, with their formats, to the place that starts at `to`. */
  | readonly ['copy', sheet: string, range: string, to: string]
  /** Cuts cells and puts them there. */
  | readonly ['move', sheet: string, range: string, to: string]
  /** Sorts the rows of a range by its first column, or the one with this number from 0. */
  | readonly ['sort', sheet: string, range: string, column: string, order: 'up' | 'down']
  /** Fills a range down from its first row, as by pulling its corner. */
  | readonly ['fill', sheet: string, range: string]
  | readonly ['insert', sheet: string, what: 'rows' | 'columns', at: string, count: string]
  | readonly ['delete', sheet: string, what: 'rows' | 'columns', at: string, count: string]
  | readonly ['rename', sheet: string, to: string]
  | readonly ['sheet', name: string, position: string]
  | readonly ['format', sheet: string, range: string, code: string]
  | readonly ['note', sheet: string, cell: string, text: string];

export interface Edit {
  readonly steps: readonly Step[];
  /** Where the workbook is saved to as it is then; nothing: it is not. */
  readonly save?: string;
}

/** What stands in a cell after a person typed into it. */
export type Content = number | string | null | { readonly formula: string };

export interface Looked {
  /** Contents of the cells that were typed into or emptied one by one, as the program took them. */
  readonly cells: Readonly<Record<string, Content>>;
  /** Rows of the sheet Runs; none where it is gone. */
  readonly runs: readonly (readonly Shown[])[];
  /** Rows of the first sheet. */
  readonly rows: readonly (readonly Shown[])[];
  /** What the program said of a step that it did not do; null when all was done. */
  readonly refused: string | null;
}

/** Steps that can be undone. */
const UNDONE: readonly string[] = ['type', 'text', 'clear', 'format'];

/** Opens each file; does each of its edits by itself, looks at the first sheet, saves, and undoes the edit. */
export async function byHand(
  files: readonly { file: string; edits: readonly Edit[] }[],
): Promise<Looked[][]> {
  const folder = mkdtempSync(join(tmpdir(), 'coilfeed-hands-'));
  try {
    const [job, out] = [join(folder, 'job'), join(folder, 'out')];
    // A copy, so that no lock lies beside the file.
    const copies = files.map(({ file }, i) => {
      const copy = join(folder, `${i}${extname(file)}`);
      copyFileSync(file, copy);
      return copy;
    });
    const lines = files.flatMap(({ edits }, i) => {
      const open = ['open', copies[i] as string];
      const each = edits.flatMap(({ steps, save }) => [
        ...steps,
        ['look'],
        ...(save === undefined ? [] : [['save', resolve(save)]]),
        // Undoing more than what stands in cells ends the program at times.
        ...(steps.every(([what]) => UNDONE.includes(what)) ? [['undo']] : [['close'], open]),
      ]);
      return [open, ...each, ['close']];
    });
    writeFileSync(job, `${lines.map((line) => line.join('\t')).join('\n')}\n`);
    const profile = join(folder, 'profile');
    profileWith(profile, BASIC);
    const said = await office(
      [
        `-env:UserInstallation=file://${profile}`,
        '--headless',
        `macro:///Standard.Module1.Main("${job}","${out}")`,
      ],
      files.length + lines.length / 50,
    );
    if (!existsSync(out)) throw new Error(`LibreOffice did not run the macro: ${said}`);
    const looks = read(readFileSync(out, 'utf8'));
    return files.map(({ edits }) => looks.splice(0, edits.length));
  } finally {
    rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
  }
}

function read(text: string): Looked[] {
  const looks: Looked[] = [];
  let refused: string | null = null;
  let cells: Record<string, Content> = {};
  let [rows, runs]: [Shown[][], Shown[][]] = [[], []];
  for (const line of text.split('\n')) {
    const [kind, ...found] = line.split('\t');
    if (kind === 'refused') refused = found.join(' ');
    else if (kind === 'row' || kind === 'run') (kind === 'row' ? rows : runs).push(found.map(shownIn));
    else if (kind === 'cell') cells[found[0] as string] = contentIn(found[1] ?? '');
    else if (kind === 'looked') {
      looks.push({ rows, runs, cells, refused });
      [rows, runs, cells, refused] = [[], [], {}, null];
    } else if (kind === 'failed') throw new Error(`LibreOffice: ${found.join(' ')}`);
  }
  return looks;
}

const shownIn = (text: string): Shown =>
  text === '' ? null : text.startsWith('#') ? Number(text.slice(1)) : text.slice(1);
const contentIn = (text: string): Content =>
  text.startsWith('=') ? { formula: text.slice(1) } : shownIn(text);

const BASIC = `
Dim doc As Object
Dim out As Object

Sub Main(job As String, result As String)
  Dim files As Object, source As Object, f
  files = CreateUnoService("com.sun.star.ucb.SimpleFileAccess")
  source = CreateUnoService("com.sun.star.io.TextInputStream")
  source.setInputStream(files.openFileRead(ConvertToURL(job)))
  source.setEncoding("UTF-8")
  out = CreateUnoService("com.sun.star.io.TextOutputStream")
  out.setOutputStream(files.openFileWrite(ConvertToURL(result)))
  out.setEncoding("UTF-8")
  Do While Not source.isEOF()
    f = Split(source.readLine(), Chr(9))
    If UBound(f) >= 0 Then Once(f)
  Loop
  out.closeOutput()
  StarDesktop.terminate()
End Sub

Sub Once(f)
  On Error GoTo Wrong
  Do1(f)
  Exit Sub
Wrong:
  out.writeString(IIf(f(0) = "open" Or f(0) = "save", "failed", "refused") & Chr(9) & Join(f, " ") & ": " & Error() & Chr(10))
End Sub

Sub Do1(f)
  Dim no(0) As New com.sun.star.beans.PropertyValue
  Dim sheet As Object
  Select Case f(0)
    Case "open"
      no(0).Name = "Hidden"
      no(0).Value = True
      doc = StarDesktop.loadComponentFromURL(ConvertToURL(f(1)), "_blank", 0, no())
      If IsNull(doc) Then Error 53
      Exit Sub
    Case "save"
      no(0).Name = "FilterName"
      no(0).Value = IIf(Right(f(1), 4) = ".ods", "calc8", "Calc MS Excel 2007 XML")
      doc.storeToURL(ConvertToURL(f(1)), no())
      Exit Sub
    Case "close"
      doc.close(True)
      Exit Sub
    Case "look"
      Look()
      Exit Sub
    Case "undo"
      Do While doc.UndoManager.isUndoPossible()
        doc.UndoManager.undo()
      Loop
      Exit Sub
    Case "sheet"
      doc.Sheets.insertNewByName(f(1), CInt(f(2)))
      Exit Sub
  End Select
  sheet = doc.Sheets.getByName(f(1))
  Select Case f(0)
    Case "type"
      sheet.getCellRangeByName(f(2)).FormulaLocal = f(3)
      Content(f(2), sheet.getCellRangeByName(f(2)))
    Case "text"
      sheet.getCellRangeByName(f(2)).String = f(3)
      Content(f(2), sheet.getCellRangeByName(f(2)))
    Case "clear"
      sheet.getCellRangeByName(f(2)).clearContents(23)
      If InStr(f(2), ":") = 0 Then Content(f(2), sheet.getCellRangeByName(f(2)))
    Case "copy"
      sheet.unprotect("")
      sheet.copyRange(sheet.getCellRangeByName(f(3)).CellAddress, sheet.getCellRangeByName(f(2)).RangeAddress)
    Case "move"
      sheet.unprotect("")
      sheet.moveRange(sheet.getCellRangeByName(f(3)).CellAddress, sheet.getCellRangeByName(f(2)).RangeAddress)
    Case "sort"
      sheet.unprotect("")
      Dim fields(0) As New com.sun.star.table.TableSortField
      fields(0).Field = CInt(f(3))
      fields(0).IsAscending = (f(4) = "up")
      Dim how(1) As New com.sun.star.beans.PropertyValue
      how(0).Name = "SortFields"
      how(0).Value = fields()
      how(1).Name = "ContainsHeader"
      how(1).Value = False
      sheet.getCellRangeByName(f(2)).sort(how())
    Case "fill"
      sheet.unprotect("")
      sheet.getCellRangeByName(f(2)).fillAuto(com.sun.star.sheet.FillDirection.TO_BOTTOM, 1)
    Case "insert"
      sheet.unprotect("")
      If f(2) = "rows" Then sheet.Rows.insertByIndex(CInt(f(3)), CInt(f(4))) Else sheet.Columns.insertByIndex(CInt(f(3)), CInt(f(4)))
    Case "delete"
      sheet.unprotect("")
      If f(2) = "rows" Then sheet.Rows.removeByIndex(CInt(f(3)), CInt(f(4))) Else sheet.Columns.removeByIndex(CInt(f(3)), CInt(f(4)))
    Case "rename"
      sheet.Name = f(2)
    Case "format"
      Dim locale As New com.sun.star.lang.Locale
      Dim key As Long
      key = doc.NumberFormats.queryKey(f(3), locale, False)
      If key = -1 Then key = doc.NumberFormats.addNew(f(3), locale)
      sheet.getCellRangeByName(f(2)).NumberFormat = key
    Case "note"
      sheet.Annotations.insertNew(sheet.getCellRangeByName(f(2)).CellAddress, f(3))
  End Select
End Sub

Sub Content(at As String, cell As Object)
  Dim text As String
  Select Case cell.Type
    Case com.sun.star.table.CellContentType.VALUE
      text = "#" & Trim(Str(cell.Value))
    Case com.sun.star.table.CellContentType.TEXT
      text = "'" & cell.String
    Case com.sun.star.table.CellContentType.FORMULA
      text = Join(Split(cell.Formula, ";"), ",")
  End Select
  out.writeString("cell" & Chr(9) & at & Chr(9) & text & Chr(10))
End Sub

Sub Look()
  doc.calculate()
  Rows("row", doc.Sheets.getByIndex(0))
  If doc.Sheets.hasByName("Runs") Then Rows("run", doc.Sheets.getByName("Runs"))
  out.writeString("looked" & Chr(10))
End Sub

Sub Rows(kind As String, sheet As Object)
  Dim cursor As Object, all, row, i As Long, j As Long, line As String
  cursor = sheet.createCursor()
  cursor.gotoEndOfUsedArea(False)
  all = sheet.getCellRangeByPosition(0, 0, 11, cursor.RangeAddress.EndRow).getDataArray()
  For i = LBound(all) To UBound(all)
    row = all(i)
    line = kind
    For j = LBound(row) To UBound(row)
      line = line & Chr(9)
      If IsEmpty(row(j)) Then
        line = line & "'#ERROR"
      ElseIf VarType(row(j)) = 8 Then
        If row(j) <> "" Then line = line & "'" & Join(Split(Join(Split(row(j), Chr(10)), " "), Chr(9)), " ")
      Else
        line = line & "#" & Trim(Str(row(j)))
      End If
    Next j
    out.writeString(line & Chr(10))
  Next i
End Sub
`;
