/** The wiring diagram: what stands in it, and that it can be read. */
import { expect, test } from 'vitest';
import { wiringDiagram } from '../../src/kit/diagram.ts';
import { formboard } from '../../src/kit/formboard.ts';
import { DEMOS, demo } from '../design/helpers.ts';
import { useBrowser } from '../peers/chromium.ts';
import { describeWithPeer } from '../peers/peer.ts';
import { banked, result, straight } from './designs.ts';
import { jobOf } from './job.ts';

const texts = (svg: string): string[] =>
  [...svg.matchAll(/<text[^>]*>([^<]*)<\/text>/g)].map(([, text]) =>
    (text as string).replaceAll('\u00a0', ' '),
  );

const COUNTS = [1, 2, 4, 6, 8, 12, 16];
const CASES: [string, string][] = [
  ...COUNTS.map((n): [string, string] => [`${n} coils`, straight(n)]),
  ...[4, 8, 12, 16].map((n): [string, string] => [`${n} coils in two banks`, banked(n)]),
  [
    '16 coils in two banks, colours and all lengths',
    `${banked(16)}kit:
  colours: { main: red, left trunk: red, right trunk: red, drop: red, coil ground: black, left strap: black, right strap: black }
  relay_at: { main: 0.4 m }
  trigger: { gauge: 18 AWG, insulation: TXL, length: 0.8 m, colour: violet, fuse: 10 A }
  relay_ground: { gauge: 18 AWG, insulation: TXL, length: 0.3 m, colour: black }
  pins: { supply: A, ground: B, control: C }
`,
  ],
  ['16 coils, no relay', straight(16).replace(/\n {4}relay: .*/, '')],
  ['6 coils, no return', straight(6).replace(/return:[\s\S]*$/, '')],
  ['4 coils on the trunk itself', straight(4).replace(/\n {2}- \{ run: drop.*/, '')],
  [
    'long names',
    straight(6)
      .replaceAll('run: drop', 'run: the longest name that a person may giv')
      .replaceAll('run: coil ground', 'run: Wmmmmmmmmmmmmmmmmmmmmmmmmmmmmmmmmmmmmmm'),
  ],
  ['right to left and emoji', straight(4).replaceAll('run: drop', 'run: "סליל 😀😀 ab"')],
  ...DEMOS.map((name): [string, string] => [name, demo(name)]),
];

test('the diagram of the straight six shows every part with its terminals, sizes and lengths', async () => {
  const bare = demo('hill-climb-six').replace(/\nkit:[\s\S]*(?=\nshop:)/, '\n');
  const found = texts(wiringDiagram(result(bare)));
  // Read off the design by hand: a 1.5 m main with fuse at 0.15 m and a relay, six branches of 0.45 m, six grounds of
  // 0.35 m, a strap of 0.5 m in 4 AWG. 0.45 m is 17.72 in.
  for (const text of ['BAT+', 'BAT−', 'F1', 'K1', 'S1', 'G1', '30', '87', '85', '86', '4 AWG C'])
    expect(found, text).toContain(text);
  for (const n of [1, 2, 3, 4, 5, 6]) {
    expect(found).toContain(`coil ${n}`);
    expect(found).toContain(`branch.${n}`);
    expect(found).toContain(`coil ground.${n}`);
  }
  expect(found.filter((t) => t.endsWith('(17.72 in)'))).toHaveLength(6);
  expect(found.join(' ')).toContain('0.150 m (5.91 in)');
  expect(found).toContain('original ignition');
  expect(found.filter((t) => t === 'resistor')).toHaveLength(1);
  // Where the relay sits along the run is not known: two pieces of the run and both wires of the relay coil are blanks.
  expect(found.filter((t) => t === 'length ____')).toHaveLength(4);
  // With its place at 0.30 m there are 0.30 - 0.15 m before and 1.5 - 0.30 m behind it, and no blanks are left.
  const whole = texts(wiringDiagram(result(demo('hill-climb-six'))));
  // But for the title block, since no shop is named.
  expect(whole.filter((t) => t.includes('____'))).toEqual([
    expect.stringContaining('not in'),
    // Nor the pins of the coil's connector.
    '15: pin ____',
    '31: pin ____',
    'pin ____',
    '______',
    'Revision ______, date ______',
  ]);
  for (const length of ['0.150 m', '1.200 m', '0.800 m', '0.250 m'])
    expect(
      whole.some((t) => t.includes(length)),
      length,
    ).toBe(true);
});

test('the original control wire is drawn at the coil’s connector, with the pins that the design names', () => {
  const pins = (kit: string): string[] => texts(wiringDiagram(result(straight(4, kit))));
  expect(pins('  pins: { supply: A, ground: B2, control: "<C>" }\n')).toEqual(
    expect.arrayContaining([
      'each coil',
      '15: pin A',
      '31: pin B2',
      'pin &lt;C&gt;',
      'original',
      'control wire',
    ]),
  );
  expect(pins('')).toEqual(expect.arrayContaining(['15: pin ____', '31: pin ____', 'pin ____']));
  expect(wiringDiagram(result(straight(4)))).toMatch(/<path class="control" d="M[\d. ]+L[\d. ]+"/);
});

test('a title that is longer than the title block goes on in a second line', () => {
  const titled = (title: string): string[] =>
    texts(wiringDiagram(result(straight(4).replace(/^title: .*$/m, `title: ${title}`))));
  const long = 'Five cylinders, one coil on each of the plugs, one spark in every cycle';
  const found = titled(long);
  const at = found.indexOf('Wiring diagram');
  expect(`${found[at + 1]} ${found[at + 2]}`).toBe(long);
  expect(titled(`${long}, ${long}`)[at + 2]).toMatch(/ …$/);
});

test('no length is broken where the drawing is full', () => {
  const [, full = ''] = CASES.find(([of]) => of.startsWith('16 coils in two banks, colours')) ?? [];
  const found = texts(wiringDiagram(result(full)));
  // 0.6 m of each trunk is cut by its fuse; the straps of 0.4 m are 15.75 in.
  expect(found.filter((t) => t.includes('(15.75 in)'))).toHaveLength(2);
});

test('the same result gives the same diagram', async () => {
  const one = result(straight(8));
  expect(wiringDiagram(one)).toBe(wiringDiagram(one));
});

test('a design that fails says so in the diagram', async () => {
  const svg = wiringDiagram(result(straight(16).replace('gauge: 6 AWG', 'gauge: 22 AWG')));
  expect(texts(svg).join(' ')).toContain('NOT RELEASED FOR BUILDING: the design fails');
});

test('names cannot leave their place in the markup', async () => {
  const svg = wiringDiagram(
    result(straight(1, '', '<script>alert(1)</script>&"\'').replace('run: drop', 'run: "a</text><script>"')),
  );
  expect(svg).not.toContain('<script');
  expect(texts(svg).join('')).toContain('a&lt;/text&gt;&lt;script&gt;.1');
});

interface Box {
  text: string;
  left: number;
  top: number;
  right: number;
  bottom: number;
}

interface Line {
  wire: string;
  from: string;
  to: string;
  /** Its corners, from one end to the other [pixel]. */
  at: { x: number; y: number }[];
}

interface Seen {
  page: Box;
  spots: Box[];
  dots: { x: number; y: number }[];
  lines: Line[];
  texts: Box[];
  wires: { x: number; y: number }[];
}

/** Runs in the browser: boxes of all texts, and points a quarter of a millimetre apart along every wire. */
const LOOK = `(() => {
  const box = (e) => {
    const { left, top, right, bottom } = e.getBoundingClientRect();
    return { text: e.textContent, left, top, right, bottom };
  };
  return {
    page: box(document.querySelector('svg')),
    texts: [...document.querySelectorAll('text')].map(box),
    spots: [...document.querySelectorAll('g[data-spot]')].map((g) => ({ ...box(g), text: g.dataset.spot })),
    dots: [...document.querySelectorAll('circle.full')].map((c) => {
      const { left, right, top, bottom } = c.getBoundingClientRect();
      return { x: (left + right) / 2, y: (top + bottom) / 2 };
    }),
    lines: [...document.querySelectorAll('path[data-wire]')].map((path) => ({
      wire: path.dataset.wire,
      from: path.dataset.from,
      to: path.dataset.to,
      at: path.getAttribute('d').slice(1).split('L').map((pair) => {
        const [x, y] = pair.split(' ').map(Number);
        const { x: left, y: top } = new DOMPoint(x, y).matrixTransform(path.getScreenCTM());
        return { x: left, y: top };
      }),
    })),
    wires: [...document.querySelectorAll('path.feed,path.return,path.link,path.open,path.control')].flatMap((path) => {
      const matrix = path.getScreenCTM();
      const steps = Math.ceil(path.getTotalLength() * 4);
      return Array.from({ length: steps + 1 }, (_, i) => {
        const { x, y } = path.getPointAtLength(i / 4).matrixTransform(matrix);
        return { x, y };
      });
    }),
  };
})()`;

/** A millimetre on the screen is 3.78 pixels: half of one is what a line is wide. */
const NEAR = 2;
const near = (a: { x: number; y: number }, b: { x: number; y: number }): boolean =>
  Math.abs(a.x - b.x) < NEAR && Math.abs(a.y - b.y) < NEAR;

/** Ends of wires that neither touch the part that they are said to end at nor go on as a line of the same wire. */
const loose = ({ lines, spots }: Seen): string[] =>
  lines.flatMap(({ wire, from, to, at }, i) =>
    (
      [
        [from, at[0]],
        [to, at.at(-1)],
      ] as const
    ).flatMap(([spot, end]) => {
      if (end === undefined) return [`${wire}: no line`];
      const reached = spots.some(
        (s) =>
          s.text === spot &&
          end.x > s.left - NEAR &&
          end.x < s.right + NEAR &&
          end.y > s.top - NEAR &&
          end.y < s.bottom + NEAR,
      );
      const goesOn = lines.some(
        (other, n) => n !== i && other.wire === wire && other.at.some((point) => near(point, end)),
      );
      return reached || goesOn ? [] : [`${wire} at ${spot}`];
    }),
  );

/** Where three lines of one part come together without a dot, and where lines of two parts lie over each other. */
function bare({ lines, dots, spots }: Seen): string[] {
  const at = new Map<string, { x: number; y: number; arms: Set<string> }>();
  const parts = lines.flatMap((one) =>
    one.at.slice(1).map((end, i) => ({ one, from: one.at[i] as { x: number; y: number }, to: end })),
  );
  const corners = lines.flatMap((one) => one.at);
  for (const corner of corners) {
    const key = `${Math.round(corner.x)} ${Math.round(corner.y)}`;
    const known = at.get(key) ?? { ...corner, arms: new Set<string>() };
    for (const { from, to } of parts) {
      const [left, right] = [Math.min(from.x, to.x), Math.max(from.x, to.x)];
      const [top, bottom] = [Math.min(from.y, to.y), Math.max(from.y, to.y)];
      const inside =
        corner.x > left - 0.5 && corner.x < right + 0.5 && corner.y > top - 0.5 && corner.y < bottom + 0.5;
      if (!inside) continue;
      if (corner.x > left + NEAR) known.arms.add('left');
      if (corner.x < right - NEAR) known.arms.add('right');
      if (corner.y > top + NEAR) known.arms.add('up');
      if (corner.y < bottom - NEAR) known.arms.add('down');
    }
    at.set(key, known);
  }
  return (
    [...at.values()]
      .filter(({ arms }) => arms.size > 2)
      // Three wires may meet in the symbol of a splice or a ground point itself.
      .filter((point) => !dots.some((dot) => near(dot, point)))
      .filter(
        (point) =>
          !spots.some((s) => /^[SG]\d/.test(s.text) && Math.abs((s.left + s.right) / 2 - point.x) < NEAR),
      )
      .map(({ x, y }) => `a joint without a dot at ${x.toFixed(0)} ${y.toFixed(0)}`)
  );
}

describeWithPeer('chromium', 'the diagram can be read', () => {
  const browser = useBrowser();

  test('no text lies over another, on a wire or a symbol’s edge, or outside of the page', async () => {
    const page = await browser().newPage();
    const drawings = [
      ...CASES.map(([of, design]) => [of, wiringDiagram(result(design))] as const),
      // Laid out by the same code: those with most labels, and the longest.
      ...CASES.filter(([of]) => /^16|^two-bank|^long/.test(of)).map(
        ([of, design]) => [`formboard, ${of}`, formboard(jobOf(design, false))] as const,
      ),
    ];
    for (const [name, svg] of drawings) {
      await page.setContent(`<body style="margin:0">${svg}</body>`);
      const seen = await page.evaluate<Seen>(LOOK);
      // Boxes are as tall as the font's whole line; letters fill about two thirds of it. A tenth of the height off
      // each side leaves the letters' own boxes.
      const boxes: Box[] = seen.texts.map((t) => {
        const cut = (t.bottom - t.top) * 0.15;
        return { ...t, top: t.top + cut, bottom: t.bottom - cut };
      });
      expect(boxes.length, name).toBeGreaterThan(8);
      expect(loose(seen), name).toEqual([]);
      expect(bare(seen), name).toEqual([]);
      const over = boxes.flatMap((a, i) =>
        boxes
          .slice(i + 1)
          .filter((b) => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom)
          .map((b) => `${a.text} | ${b.text}`),
      );
      expect(over, name).toEqual([]);
      const crossed = boxes.filter((b) =>
        seen.wires.some((w) => w.x > b.left && w.x < b.right && w.y > b.top && w.y < b.bottom),
      );
      expect(
        crossed.map((b) => b.text),
        name,
      ).toEqual([]);
      const outside = boxes.filter(
        (b) =>
          b.left < seen.page.left ||
          b.right > seen.page.right ||
          b.top < seen.page.top ||
          b.bottom > seen.page.bottom,
      );
      expect(
        outside.map((b) => b.text),
        name,
      ).toEqual([]);
    }
  });
});

/** Names as long as they may be, and more parts in a row than the demos have, take smaller letters. */
const SMALLER = ['long names', 'right to left and emoji'];

test('letters are at least 8 points on A4 and Letter', () => {
  // 8 points are 2.82 mm: what a drawing on a bench is read by at arm’s length. An arbitrary choice.
  const small = CASES.filter(([name]) => !SMALLER.includes(name)).flatMap(([name, design]) => {
    const svg = wiringDiagram(result(design));
    const scale = Number(/scale\(([\d.]+)\)/.exec(svg)?.[1]);
    const sizes = [...svg.matchAll(/font-size="([\d.]+)"/g)].map(([, size]) => Number(size) * scale);
    return Math.min(...sizes) < (8 * 25.4) / 72 - 1e-3
      ? [`${name}: ${Math.min(...sizes).toFixed(2)} mm`]
      : [];
  });
  expect(small).toEqual([]);
});
