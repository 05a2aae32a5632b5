/** Pictures as files: what `--out` and `--plots` write, and what they leave alone. */
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { inflateSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import { drawn } from '../../src/commands/pictures.ts';
import { stateOf } from '../../src/commands/seal/seal.ts';
import { picturesOf } from '../../src/pictures/all.ts';
import { slugs } from '../../src/pictures/words.ts';
import { coilfeed, emptyFolder, toolPath } from '../cli/tool.ts';
import { modelOf } from '../physics/harness.ts';
import { textOf } from '../transient/made-up.ts';
import { design, evaluated } from './designs.ts';
import { fontFile, measure } from './scene.ts';

const { Resvg } = createRequire(import.meta.url)('@resvg/resvg-js') as typeof import('@resvg/resvg-js');

/** Size and pixels of a PNG, its chunks put together; the filters of the rows are left as they are. */
function readPng(png: Uint8Array): { width: number; height: number; chunks: string[]; bytes: Uint8Array } {
  const view = new DataView(png.buffer, png.byteOffset, png.byteLength);
  const chunks: string[] = [];
  const data: Uint8Array[] = [];
  for (let at = 8; at < png.length; ) {
    const length = view.getUint32(at);
    const name = String.fromCharCode(...png.subarray(at + 4, at + 8));
    chunks.push(name);
    if (name === 'IDAT') data.push(png.subarray(at + 8, at + 8 + length));
    at += 12 + length;
  }
  return {
    width: view.getUint32(16),
    height: view.getUint32(20),
    chunks,
    bytes: inflateSync(Buffer.concat(data)),
  };
}

describe('one picture', () => {
  const { pictures } = picturesOf(evaluated('six coils'));

  test.each(pictures)(
    '$name: the same bytes twice; SVG and PNG that other programs read',
    async (picture) => {
      const [svg, png] = await drawn(picture, ['svg', 'png']);
      const again = await drawn(picture, ['svg', 'png']);
      if (!svg || !png) throw new Error('nothing was drawn');
      expect(again.map(({ bytes }) => Buffer.from(bytes).toString('base64'))).toEqual(
        [svg, png].map(({ bytes }) => Buffer.from(bytes).toString('base64')),
      );
      const text = new TextDecoder().decode(svg.bytes);
      expect(text).toContain('<title id="title">An engine with 6 cylinders</title>');
      // Throws on XML that is not well formed.
      const read = new Resvg(text, { font: { fontFiles: [fontFile('DejaVuSans')], loadSystemFonts: false } });
      const image = readPng(png.bytes);
      // Two pixels for each, as the drawing says.
      expect([image.width, image.height]).toEqual([2 * read.width, 2 * read.height]);
      expect(image.chunks[0]).toBe('IHDR');
      expect(image.chunks[1]).toBe('tEXt');
      expect(image.chunks.at(-1)).toBe('IEND');
      // Lines, letters and their edges: a blank picture has a handful of values.
      expect(new Set(image.bytes).size).toBeGreaterThan(100);
    },
  );

  test('text that XML reserves, or that it cannot hold', async () => {
    const odd = modelOf(design({ coils: 2, title: 'A & B <c> "d" \ud800 \uffff 点火' }));
    const [picture] = picturesOf(odd).pictures;
    if (!picture) throw new Error('no picture');
    const [svg, png] = await drawn(picture, ['svg', 'png']);
    expect(new TextDecoder().decode(svg?.bytes)).toContain(
      '<title id="title">A &amp; B &lt;c&gt; &quot;d&quot; � � 点火</title>',
    );
    expect(readPng(png?.bytes ?? new Uint8Array()).chunks).toContain('tEXt');
  });

  test('is known by its mark, and nothing else is', async () => {
    const [picture] = pictures;
    if (!picture) throw new Error('no picture');
    const [svg, png] = await drawn(picture, ['svg', 'png']);
    if (!svg || !png) throw new Error('nothing was drawn');
    // Not sealed yet: ours, and not as it is written.
    expect([await stateOf('a.svg', svg.bytes), await stateOf('a.png', png.bytes)]).toEqual([
      'edited',
      'edited',
    ]);
    expect(await stateOf('a.png', svg.bytes)).toBe('foreign');
    const bare = new Resvg('<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9"/>').render().asPng();
    expect(await stateOf('a.png', bare)).toBe('foreign');
    const plain = new TextEncoder().encode('<svg xmlns="http://www.w3.org/2000/svg"></svg>');
    for (const [name, bytes] of [
      ['a.svg', plain],
      ['a.svg', new Uint8Array()],
      ['a.png', new Uint8Array()],
    ] as const)
      expect(await stateOf(name, bytes), name).toBe('foreign');
  });
});

test.each(['plain', 'bold'] as const)(
  'letters are as wide as another reader of the font draws them: %s',
  (weight) => {
    const file = fontFile(weight === 'bold' ? 'DejaVuSans-Bold' : 'DejaVuSans');
    // The width of nine more letters, so that the space at the sides of the first and last does not count.
    const right = (text: string): number => {
      const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="9000" height="200"><text x="0" y="150" font-family="DejaVu Sans" font-size="100"${weight === 'bold' ? ' font-weight="bold"' : ''}>${text}</text></svg>`;
      const box = new Resvg(svg, { font: { fontFiles: [file], loadSystemFonts: false } }).getBBox();
      return (box?.x ?? 0) + (box?.width ?? 0);
    };
    for (const letter of ['H', 'e', '1', 'm', '→', 'ä', '²', '°']) {
      const drawnWidth = right(letter.repeat(10)) - right(letter);
      // Boxes of drawn letters are approximate: half a pixel is a two-hundredth of a letter.
      expect(Math.abs(measure(letter.repeat(9), 100, weight === 'bold') - drawnWidth), letter).toBeLessThan(
        0.5,
      );
    }
  },
);

test('names of files: plain letters, told apart', () => {
  expect(slugs(['limiter', 'Full load, hot', 'Vollgas (heiß)', '怠速', 'a b', 'a-b'])).toEqual([
    'limiter',
    'full-load-hot',
    'vollgas-hei',
    '4',
    'a-b',
    'a-b-6',
  ]);
});

describe('coilfeed size --plots', () => {
  const six = JSON.stringify(design({ coils: 6 }));
  const NAMES = ['curves-main', 'drop', 'speed', 'trace-cranking', 'trace-limiter'];
  const FILES = NAMES.flatMap((name) => [`${name}.png`, `${name}.svg`]);

  test('writes every picture into a folder that it makes, and again over its own', async () => {
    const cwd = emptyFolder();
    const size = (...more: string[]) =>
      coilfeed(['size', '-', '--plots', 'a/b', ...more], { cwd, stdin: six });
    const { err, out, status } = await size();
    // Sizes were found that keep every rule, so the design passes.
    expect([status, err]).toEqual([0, '']);
    expect(out).toMatch(/^PASS /m);
    expect(out.replace(/\s+/g, ' ')).toContain(
      'Pictures in a/b, each as .svg and .png: trace-cranking, trace-limiter, drop, speed, curves-main',
    );
    expect(readdirSync(join(cwd, 'a/b')).sort()).toEqual(FILES);
    const before = FILES.map((file) => readFileSync(join(cwd, 'a/b', file)));
    const again = await size('--json');
    expect(JSON.parse(again.out).format).toBe('coilfeed-result/1');
    expect(again.err).toContain('Pictures in a/b');
    expect(FILES.map((file) => readFileSync(join(cwd, 'a/b', file)))).toEqual(before);
  });

  test('says what it cannot draw, and why', async () => {
    const bare = JSON.stringify(design({ coils: 2, sweep: null, supply: {}, coil: { peak: '12 A' } }));
    const cwd = emptyFolder();
    const { out, status } = await coilfeed(['size', '-', '--plots', 'a'], { cwd, stdin: bare });
    // Without a resistance of the source much is unknown; what can be drawn is drawn all the same.
    expect(status).toBe(1);
    expect(readdirSync(join(cwd, 'a')).sort()).toEqual(['drop.png', 'drop.svg']);
    const text = out.replace(/\s+/g, ' ');
    expect(text).toContain('Pictures in a, each as .svg and .png: drop');
    expect(text).toContain('No picture "trace": Only a peak current is known');
    expect(text).toContain('No picture "speed": The design has no sweep.');
    expect(text).toContain('No picture "curves": Without supply.source_resistance');
  });

  test('leaves another file alone, and writes nothing at all then', async () => {
    const cwd = emptyFolder();
    writeFileSync(join(cwd, 'speed.png'), 'mine');
    const ran = await coilfeed(['size', '-', '--plots', '.'], { cwd, stdin: six });
    expect(ran.status).toBe(2);
    expect(ran.err.replace(/\s+/g, ' ')).toContain('"speed.png" exists and was not made by coilfeed');
    expect(readdirSync(cwd)).toEqual(['speed.png']);
    const forced = await coilfeed(['size', '-', '--plots', '.', '--force'], { cwd, stdin: six });
    expect(forced.status).toBe(0);
    expect(readdirSync(cwd).sort()).toEqual(FILES);
  });

  test('a file in place of the folder is refused', async () => {
    const cwd = emptyFolder();
    writeFileSync(join(cwd, 'a'), 'mine');
    const ran = await coilfeed(['size', '-', '--plots', 'a'], { cwd, stdin: six });
    expect([ran.status, ran.out]).toEqual([2, '']);
    expect(ran.err).toContain('"a" is not a folder');
  });
});

test('a call that draws SVG loads no library that draws', () => {
  const folder = join(dirname(toolPath()), 'chunks');
  const chunks = readdirSync(folder).map((name) => ({
    name,
    text: readFileSync(join(folder, name), 'utf8'),
  }));
  // What draws is ours and small: the chunk with the mark of a picture, without the machine code for PNG.
  const [drawing, ...others] = chunks.filter(({ text }) => text.includes('the font has no table'));
  expect(others).toEqual([]);
  expect(drawing?.text.length).toBeLessThan(40_000);
  expect(drawing?.text).toMatch(/import\(["'`]@resvg\/resvg-js["'`]\)/);
  expect(drawing?.text).not.toMatch(/from\s*["']@resvg/);
});

describe('coilfeed trace --out', () => {
  const document = JSON.stringify(design({ coils: 6 }));
  const trace = (cwd: string, ...argv: string[]) =>
    coilfeed(['trace', '-', '--point', 'limiter', ...argv], { cwd, stdin: document });

  test.each(['a.svg', 'a.PNG'])('%s', async (name) => {
    const cwd = emptyFolder();
    const { status, out, err } = await trace(cwd, '--out', name, '--run', 'main');
    expect([status, err]).toEqual([0, '']);
    expect(out).toContain(`Picture: ${name}`);
    const bytes = readFileSync(join(cwd, name));
    expect(await stateOf(name, bytes)).toBe('as made');
  });

  test('another file is left alone', async () => {
    const cwd = emptyFolder();
    writeFileSync(join(cwd, 'a.svg'), '<svg xmlns="http://www.w3.org/2000/svg"/>');
    const { status, err } = await trace(cwd, '--out', 'a.svg');
    expect(status).toBe(2);
    expect(err).toContain('not made by coilfeed');
    expect(readFileSync(join(cwd, 'a.svg'), 'utf8')).toBe('<svg xmlns="http://www.w3.org/2000/svg"/>');
  });

  test('a recording on the computed current', async () => {
    const cwd = emptyFolder();
    const recording = textOf({
      drive: 13,
      ohm: 0.48,
      henry: 2.4e-3,
      dwell: 3e-3,
      period: 40e-3,
      every: 1e-5,
      length: 0.2,
      noise: 0.05,
    });
    writeFileSync(join(cwd, 'clamp.csv'), recording);
    const { status, err } = await trace(cwd, '--measured', 'clamp.csv', '--out', 'both.svg');
    expect([status, err]).toEqual([0, '']);
    const text = readFileSync(join(cwd, 'both.svg'), 'utf8');
    for (const word of ['measured', 'computed', 'Measured less computed', 'Current in A'])
      expect(text).toContain(word);
    expect(existsSync(join(cwd, 'both.png'))).toBe(false);
  });
});
