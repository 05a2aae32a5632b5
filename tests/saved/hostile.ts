/** Files made to hurt: each is made from a sound workbook, or from nothing, and none may be read as a design. */
import { strToU8, unzipSync, type Zippable, zipSync } from 'fflate';
import { changedPart, type Parts, sheetPart } from './edit.ts';

const WORKBOOK = 'xl/workbook.xml';
const STRINGS = 'xl/sharedStrings.xml';
const inputs = (parts: Parts): string => sheetPart(parts, 'Inputs');
const rels = (parts: Parts): string =>
  inputs(parts).replace('worksheets/', 'worksheets/_rels/').concat('.rels');

const withParts = (bytes: Uint8Array, more: Zippable): Uint8Array =>
  zipSync({ ...unzipSync(bytes), ...more });
const without = (bytes: Uint8Array, ...names: string[]): Uint8Array =>
  zipSync(Object.fromEntries(Object.entries(unzipSync(bytes)).filter(([name]) => !names.includes(name))));
const zeros = (length: number): Uint8Array => new Uint8Array(length);

/** Puts text behind the begin of an element of the sheet of the inputs. */
const into = (bytes: Uint8Array, element: string, xml: string): Uint8Array =>
  changedPart(bytes, inputs, (text) => text.replace(new RegExp(`<${element}[^>]*>`), (begin) => begin + xml));
const before = (bytes: Uint8Array, element: string, xml: string): Uint8Array =>
  changedPart(bytes, inputs, (text) => text.replace(element, xml + element));
const names = (bytes: Uint8Array, xml: string): Uint8Array =>
  changedPart(
    bytes,
    () => WORKBOOK,
    (text) => text.replace('</definedNames>', `${xml}</definedNames>`),
  );

/** Numbers of the directory of an archive written over: 20 packed size, 24 size, 16 check sum, 8 flags. */
function directory(bytes: Uint8Array, write: (view: DataView, at: number, i: number) => void): Uint8Array {
  const copy = bytes.slice();
  const view = new DataView(copy.buffer);
  let i = 0;
  for (let at = 0; at + 46 < copy.length; at++)
    if (view.getUint32(at, true) === 0x02014b50) write(view, at, i++);
  return copy;
}

const MANY = 400_000;

/** By what is done to the file. A value of `read` may be read as the design it was made from; all others may not. */
export const HOSTILE: Readonly<Record<string, { make: (sound: Uint8Array) => Uint8Array; read?: true }>> = {
  'cut off in the middle': { make: (b) => b.subarray(0, b.length >> 1) },
  'cut off at the end': { make: (b) => b.subarray(0, b.length - 30) },
  'only the first bytes of an archive': { make: () => strToU8('PK') },
  'an empty archive': { make: () => zipSync({}) },
  'an archive of something else': { make: () => zipSync({ 'a.txt': strToU8('words') }) },
  'a part that swells to 50 MB': { make: (b) => withParts(b, { [STRINGS]: zeros(50_000_000) }) },
  'a sheet that swells to 60 MB': {
    make: (b) => withParts(b, { [inputs(unzipSync(b))]: zeros(60_000_000) }),
  },
  'a hundred parts that swell to 1 GB': {
    make: (b) =>
      withParts(b, Object.fromEntries(Array.from({ length: 100 }, (_, i) => [`x${i}`, zeros(10_000_000)]))),
  },
  'a size that is a lie': {
    make: (b) =>
      directory(withParts(b, { [STRINGS]: zeros(50_000_000) }), (v, at) => v.setUint32(at + 24, 1000, true)),
  },
  'a size beyond all memory': {
    make: (b) => directory(b, (v, at) => v.setUint32(at + 24, 0xfffffff0, true)),
  },
  'check sums that are wrong': { make: (b) => directory(b, (v, at) => v.setUint32(at + 16, 1, true)) },
  'parts that are said to be encrypted': {
    make: (b) => directory(b, (v, at) => v.setUint16(at + 8, 1, true)),
  },
  'the same part twice': {
    make: (b) => {
      const twice = withParts(b, { 'docProps/cord.xml': strToU8('x') });
      return directory(twice, (v, at) => {
        const name = new TextDecoder().decode(new Uint8Array(v.buffer, at + 46, v.getUint16(at + 28, true)));
        if (name === 'docProps/cord.xml') v.setUint8(at + 46 + 'docProps/cor'.length, 'e'.charCodeAt(0));
      });
    },
  },
  '60 000 parts': {
    make: (b) =>
      withParts(
        b,
        Object.fromEntries(Array.from({ length: 60_000 }, (_, i) => [`p${i}`, [zeros(0), { level: 0 }]])),
      ),
  },
  'no list of parts': { make: (b) => without(b, '[Content_Types].xml', '_rels/.rels'), read: true },
  'no workbook part': { make: (b) => without(b, WORKBOOK) },
  'no relationships': { make: (b) => without(b, 'xl/_rels/workbook.xml.rels') },
  'no texts': { make: (b) => without(b, STRINGS) },
  'no sheet of the inputs': { make: (b) => without(b, inputs(unzipSync(b))) },
  'no properties': { make: (b) => without(b, 'docProps/core.xml') },
  'no styles': { make: (b) => without(b, 'xl/styles.xml'), read: true },
  'a sheet that is no XML': {
    make: (b) => withParts(b, { [inputs(unzipSync(b))]: strToU8('<<<>>><sheetData><c') }),
  },
  'texts nested without end': { make: (b) => withParts(b, { [STRINGS]: strToU8('<sst>'.repeat(MANY)) }) },
  'texts of many elements': {
    make: (b) => withParts(b, { [STRINGS]: strToU8(`<sst>${'<si/>'.repeat(MANY)}</sst>`) }),
  },
  'an element of many attributes': {
    make: (b) => withParts(b, { [STRINGS]: strToU8(`<sst ${'a="" '.repeat(MANY)}/>`) }),
  },
  'one text of 7 MB': {
    make: (b) => withParts(b, { [STRINGS]: strToU8(`<sst><si><t>${'x'.repeat(7_000_000)}</t></si></sst>`) }),
  },
  'entities that stand for each other': {
    make: (b) =>
      changedPart(
        b,
        () => STRINGS,
        (xml) =>
          xml.replace(
            /<sst[^>]*>/,
            (begin) =>
              `<!DOCTYPE x [<!ENTITY a "${'y'.repeat(1000)}"><!ENTITY b "${'&a;'.repeat(1000)}">]>${begin}<si><t>${'&b;'.repeat(1000)}</t></si>`,
          ),
      ),
  },
  'a file of the system as an entity': {
    make: (b) =>
      changedPart(b, inputs, (xml) =>
        xml.replace('<worksheet', '<!DOCTYPE x [<!ENTITY f SYSTEM "file:///etc/passwd">]><worksheet'),
      ),
    read: true,
  },
  'cells at the far corner of the sheet': {
    make: (b) => into(b, 'sheetData', '<row r="1048576"><c r="XFD1048576"><v>1</v></c></row>'),
    read: true,
  },
  'a cell in the last column of each of many rows': {
    make: (b) =>
      before(
        b,
        '</sheetData>',
        Array.from(
          { length: 20_000 },
          (_, i) => `<row r="${i + 900}"><c r="XFD${i + 900}"><v>1</v></c></row>`,
        ).join(''),
      ),
    read: true,
  },
  'a cell outside of every sheet': {
    make: (b) =>
      before(
        b,
        '</sheetData>',
        '<row r="9"><c r="ZZZZZZ99999999999"><v>1</v></c><c r="__proto__"><v>1</v></c></row>',
      ),
    read: true,
  },
  'columns, merges and conditions over everything': {
    make: (b) =>
      changedPart(b, inputs, (xml) =>
        xml
          .replace(
            /<cols>.*?<\/cols>/s,
            `<cols>${'<col min="1" max="16384" width="9" hidden="1"/>'.repeat(3000)}</cols>`,
          )
          .replace(
            '</sheetData>',
            `</sheetData><mergeCells>${'<mergeCell ref="A1:XFD1048576"/>'.repeat(3000)}</mergeCells>`,
          ),
      ),
    read: true,
  },
  'a validation over everything': {
    make: (b) =>
      changedPart(b, inputs, (xml) =>
        xml.replaceAll(/sqref="[^"]*"/g, `sqref="${'A1:XFD1048576 '.repeat(50)}"`),
      ),
    read: true,
  },
  'names of everything': {
    make: (b) => names(b, '<definedName name="in_x">Inputs!$A$1:$XFD$1048576</definedName>'),
    // No entry is called so: it is a name of somebody's own.
    read: true,
  },
  'many names': {
    make: (b) =>
      names(
        b,
        Array.from(
          { length: 30_000 },
          (_, i) => `<definedName name="x_${i}">Inputs!$A$1:$A$${i + 1}</definedName>`,
        ).join(''),
      ),
    read: true,
  },
  'a name that is defined twice': {
    make: (b) => names(b, '<definedName name="IN_stroke">Inputs!$A$1:$B$9</definedName>'),
  },
  'a sheet called __proto__': {
    make: (b) =>
      changedPart(
        b,
        () => WORKBOOK,
        (xml) => xml.replaceAll('name="Inputs"', 'name="__proto__"').replaceAll('Inputs!', '__proto__!'),
      ),
    read: true,
  },
  'attributes and names called __proto__': {
    make: (b) =>
      names(
        into(b, 'sheetData', '<row __proto__="x" constructor="y"><c r="ZZ1" __proto__="x"/></row>'),
        '<definedName name="__proto__">Inputs!$A$1</definedName><definedName name="constructor">x</definedName>',
      ),
    read: true,
  },
  'a link to another workbook': {
    make: (b) =>
      withParts(
        changedPart(
          b,
          () => 'xl/_rels/workbook.xml.rels',
          (xml) =>
            xml.replace(
              '</Relationships>',
              '<Relationship Id="rIdX" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/externalLink" Target="externalLinks/externalLink1.xml"/></Relationships>',
            ),
        ),
        {
          'xl/externalLinks/externalLink1.xml': strToU8(
            '<externalLink><externalBook r:id="rId1"/></externalLink>',
          ),
          'xl/externalLinks/_rels/externalLink1.xml.rels': strToU8(
            '<Relationships><Relationship Id="rId1" Type="x" Target="http://example.invalid/book.xlsx" TargetMode="External"/></Relationships>',
          ),
        },
      ),
    read: true,
  },
  'a sheet in a file of the system': {
    make: (b) =>
      changedPart(
        b,
        () => 'xl/_rels/workbook.xml.rels',
        (xml) =>
          xml.replace(/Target="worksheets\/[^"]*"/g, 'Target="../../../../etc/passwd" TargetMode="External"'),
      ),
  },
  macros: { make: (b) => withParts(b, { 'xl/vbaProject.bin': strToU8('Sub Auto_Open()') }), read: true },
  'a drawing of the sheet that is not there': {
    make: (b) =>
      withParts(b, {
        [rels(unzipSync(b))]: strToU8(
          '<Relationships><Relationship Id="rId1" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/drawing" Target="../none.xml"/></Relationships>',
        ),
      }),
    read: true,
  },
  'a part of 50 MB of nothing beside the others': {
    make: (b) => withParts(b, { 'xl/media/image1.png': zeros(50_000_000) }),
    read: true,
  },
  'a design file in it that is none': {
    make: (b) =>
      changedPart(
        b,
        () => STRINGS,
        (xml) => xml.replace('coilfeed: 1<', 'coilfeed: 99<'),
      ),
  },
  'a design file in it of brackets': {
    make: (b) =>
      changedPart(
        b,
        () => STRINGS,
        (xml) => xml.replace('coilfeed: 1<', `${'['.repeat(30_000)}<`),
      ),
  },
  'a design file in it of 5000 rows by 200 columns': {
    make: (b) =>
      changedPart(
        b,
        () => WORKBOOK,
        (xml) => xml.replace(/(name="design_text">)[^<]*/, '$1Design!$A$1:$GR$5000'),
      ),
  },
  'a design file in it that lies in the inputs': {
    make: (b) =>
      changedPart(
        b,
        () => WORKBOOK,
        (xml) => xml.replace(/(name="design_text">)[^<]*/, '$1Inputs!$A$1:$A$200'),
      ),
  },
};
