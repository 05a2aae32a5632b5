/**
 * The wiring diagram: the harness laid out from the battery on the left to the battery on the right, as SVG.
 * Black lines on white, for a page of A4 as well as of Letter, lying.
 *
 *   harness ─► graph ─► layout ─► symbols, wires, labels ─► SVG
 */
import type { Evaluation } from '../engine/evaluate.ts';
import type { Result } from '../findings/result.ts';
import { escaped } from '../pictures/elements.ts';
import { folded } from './diagram-fold.ts';
import {
  banks,
  FONT,
  type Graph,
  graphOf,
  type Labels,
  LINE,
  ROOMS,
  type Rooms,
  type Shape,
  TIGHT,
} from './diagram-graph.ts';
import { above, type Placed, type Point, placed } from './diagram-layout.ts';
import { draw, joint, leftText, mm, text, wireLine } from './diagram-symbols.ts';
import { type Free, wireRows, wireTable } from './diagram-table.ts';
import { harnessOf } from './harness.ts';
import { released } from './release.ts';
import type { TitleBlock } from './shop-block.ts';
import { textWidth, wrapText } from './text-size.ts';

/** What A4 and Letter have in common, lying, within margins of 10 mm. */
export const PAGE = { width: 259, height: 190 };
/** Above and below the drawing: status; notes, sockets and title block. */
const HEAD = 9;
const FOOT = 27;
/** Letters of 8 points, over those that are drawn. */
const READABLE = (8 * 25.4) / 72 / FONT;
/** A small harness is not blown up: what is left takes the table of wires. */
const LARGEST = 1;

const STYLE =
  'path,rect,circle{fill:none;stroke:#000;stroke-width:.35}' +
  'text{font-family:"DejaVu Sans",Verdana,Arial,sans-serif;text-anchor:middle;unicode-bidi:plaintext;fill:#000}' +
  '.feed,.return{stroke-width:.6}.open{stroke-dasharray:2 1.5}.bank{stroke-dasharray:1 1;stroke-width:.25}' +
  '.control{stroke-width:.25}.full{fill:#000}.name{font-weight:bold}.left{text-anchor:start}.thin{stroke-width:.15}';

const NOTES =
  'Dot: joint. Ring: common ground point. Lines that cross without a dot are not joined. Lengths one way, without allowance; ____: not in the design. Terminals by DIN 72552: 30 battery, 15 supply, 31 ground, 86, 85 relay coil, 87 make contact. Driver outside the coil: no control wire; the return starts at the driver.';

/** The diagram of a result. The same result gives the same text. */
export const wiringDiagram = (result: Result, block: TitleBlock | null = null): string =>
  drawing(result, { title: 'Wiring diagram', notes: NOTES }, block);

/** What is drawn of a harness. */
export interface Sheet {
  readonly title: string;
  readonly notes: string;
  /** What stands at its wires; left out: names, sizes, colours and lengths, with a table of wires where there is room. */
  readonly labels?: Labels;
}

export function drawing(result: Result, sheet: Sheet, block: TitleBlock | null): string {
  const { evaluation: e } = result;
  const harness = harnessOf(e);
  const way = (rooms: Rooms) => {
    const graph = folded(graphOf(harness, e, rooms, sheet.labels));
    return { graph, place: placed(graph) };
  };
  const larger = (a: ReturnType<typeof way>, b: ReturnType<typeof way>) =>
    scaleOf(b.place) > scaleOf(a.place) ? b : a;
  const best = ROOMS.map(way).reduce(larger);
  const { graph, place } = scaleOf(best.place) < READABLE ? larger(best, way(TIGHT)) : best;
  return svg(graph, place, result, sheet, block);
}

const ROOM = { width: PAGE.width - 2, height: PAGE.height - HEAD - FOOT - 2 };
const scaleOf = ({ width, height }: Placed): number =>
  Math.min(LARGEST, ROOM.width / width, ROOM.height / height);

function svg(graph: Graph, place: Placed, result: Result, sheet: Sheet, block: TitleBlock | null): string {
  const { evaluation: e } = result;
  const scale = scaleOf(place);
  const [width, height] = [place.width * scale, place.height * scale];
  // Below the coils, beside what is folded; beside the drawing; below it.
  const head = graph.start === undefined ? 0 : (graph.symbols.get(graph.start) as Shape).width * scale;
  const under = lowest(graph, place) * scale;
  const places: readonly Free[] = [
    { x: head, y: under, width: width - head, height: ROOM.height - under },
    { x: width, y: 0, width: ROOM.width - width, height: ROOM.height },
    { x: 0, y: height, width: ROOM.width, height: ROOM.height - height },
  ];
  const list = sheet.labels ? null : wireTable(wireRows(harnessOf(e), e), places);
  const across = Math.max(width, list === null ? 0 : list.x + list.width);
  const down = Math.max(height, list === null ? 0 : list.y + list.height);
  const left = (PAGE.width - across) / 2;
  const top = HEAD + 1 + Math.max(0, ROOM.height - down) / 2;
  const status = released(result);
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${PAGE.width}mm" height="${PAGE.height}mm" viewBox="0 0 ${PAGE.width} ${PAGE.height}" role="img">`,
    '<!-- coilfeed-kit -->',
    `<title>${escaped(`${sheet.title}: ${e.design.title}`)}</title>`,
    `<style>${STYLE}</style>`,
    `<rect width="${PAGE.width}" height="${PAGE.height}" style="fill:#fff;stroke:none"/>`,
    status.ok ? '' : banner(status.words),
    `<g class="drawn" transform="translate(${mm(left)} ${mm(top)}) scale(${Number(scale.toFixed(4))})">`,
    ...wires(place, result),
    ...place.joints.map(joint),
    ...[...place.corners].map(
      ([spot, { x, y }]) =>
        `<g data-spot="${escaped(spot.id)}" transform="translate(${mm(x)} ${mm(y)})">${draw(graph.symbols.get(spot) as Shape)}</g>`,
    ),
    ...frames(graph, place, result),
    '</g>',
    list === null ? '' : list.draw(left + list.x, top + list.y),
    foot(result, sheet, list !== null || sheet.labels !== undefined, block),
    '</svg>\n',
  ].join('\n');
}

/** Where the drawing ends below the coils, what is folded left out. */
const lowest = (graph: Graph, { corners, wires: all }: Placed): number =>
  Math.max(
    ...[...corners].map(([spot, { y }]) =>
      spot === graph.start ? 0 : y + (graph.symbols.get(spot) as Shape).height,
    ),
    ...all.map(({ edge, label }) => label.y + (edge.lines.length - above(edge.lines)) * LINE + 1),
  );

/** Notes at the left, the coil's connector and the relay's pins in the middle, the title block at the right. */
function foot(
  { evaluation: e }: Result,
  { title, notes: plain, labels }: Sheet,
  listed: boolean,
  block: TitleBlock | null,
): string {
  const y = PAGE.height - FOOT + 1;
  const relays = harnessOf(e)
    .spots.filter(({ kind }) => kind === 'relay')
    .map(({ id }) => id);
  const pins = labels === undefined ? CONNECTOR : 0;
  const room = PAGE.width - TITLE - (relays.length > 0 ? SOCKET : 0) - pins - 4;
  const notes = listed ? plain : `${plain} All lengths: table of wires.`;
  const [name = '', next = '', ...more] = wrapText(e.design.title, (TITLE - 4) / FONT);
  const lines = [
    title,
    name,
    ...(next === '' ? [] : [more.length > 0 ? `${next} …` : next]),
    `${block?.shop ?? '______'}`.slice(0, 40),
    `Revision ${block?.revision ?? '______'}, date ${e.design.date ?? '______'}`.slice(0, 44),
    block === null ? '' : `Design ${block.design}`,
  ];
  return (
    wrapText(notes, room / FONT)
      .map((line, i) => leftText([line], 1, y + i * (FONT + 0.25), false))
      .join('') +
    (pins === 0 ? '' : connector(e, room + 3, y)) +
    (relays.length === 0 ? '' : socket(relays.join(', '), room + 3 + pins, y)) +
    `<rect x="${mm(PAGE.width - TITLE)}" y="${mm(y)}" width="${TITLE - 0.5}" height="${FOOT - 2}"/>` +
    leftText(lines, PAGE.width - TITLE + 2, y + 2)
  );
}

/** Widths of the title block, of the relay's pins and of the coil's connector [mm]. */
const TITLE = 78;
const SOCKET = 44;
const CONNECTOR = 52;
/** A longer name of a pin is more than its place holds [characters]. */
const LONGEST_PIN = 6;

/** The new connector of each coil: the original control wire moves into it. */
function connector({ design: { kit, runs } }: Evaluation, x: number, y: number): string {
  const [box, end] = [23, 29];
  const pin = (name: string | null): string => name?.slice(0, LONGEST_PIN) ?? '____';
  const row = (down: number, inside: string, line: string, words: readonly string[]): string =>
    leftText([inside], x + 1.5, y + down - 1.7, false) +
    `<path class="${line}" d="M${mm(x + box)} ${mm(y + down)}L${mm(x + end)} ${mm(y + down)}"/>` +
    leftText(words, x + end + 1, y + down - 1.7, false);
  const returned = runs.some(({ side }) => side === 'return');
  return [
    `<rect x="${mm(x)}" y="${mm(y)}" width="${box}" height="20.5" rx="1.5"/>`,
    leftText(['each coil'], x + 1.5, y + 0.6),
    row(6.8, `15: pin ${pin(kit.pins.supply)}`, 'feed', ['feed']),
    row(11.2, `31: pin ${pin(kit.pins.ground)}`, 'return', [returned ? 'return' : 'ground']),
    row(15.6, `pin ${pin(kit.pins.control)}`, 'control', ['original', 'control wire']),
  ].join('');
}

/** How the pins of a common relay of five pins lie, seen from the pins: the numbers on the relay itself take precedence. */
const socket = (id: string, x: number, y: number): string =>
  [
    `<rect x="${mm(x)}" y="${mm(y)}" width="18" height="18" rx="1"/>`,
    `<rect x="${mm(x + 7)}" y="${mm(y + 1.6)}" width="4" height="1" class="full"/>`,
    `<rect x="${mm(x + 8.5)}" y="${mm(y + 12.5)}" width="1" height="4" class="full"/>`,
    `<rect x="${mm(x + 1.8)}" y="${mm(y + 7)}" width="1" height="4" class="full"/>`,
    `<rect x="${mm(x + 15.2)}" y="${mm(y + 7)}" width="1" height="4" class="full"/>`,
    text(['87'], x + 9, y + 3.2),
    text(['30'], x + 5.6, y + 13),
    text(['86'], x + 5.4, y + 7.2),
    text(['85'], x + 12.6, y + 7.2),
    leftText([id, 'from its pins;', 'the numbers', 'on the relay', 'take', 'precedence'], x + 19.2, y),
  ].join('');

const banner = (words: string): string =>
  `<rect x="20" y="0.5" width="${PAGE.width - 40}" height="7.6" style="stroke-width:.8"/>` +
  text([words], PAGE.width / 2, 1.5, 'name', Math.min(5, (PAGE.width - 50) / textWidth(words) / 1.15));

function wires(place: Placed, { evaluation: e }: Result): string[] {
  return place.wires.map(({ edge, way, label }) => {
    const side =
      edge.wire === null ? 'link' : (e.design.runs[e.design.wires[edge.wire]?.run ?? 0]?.side ?? 'link');
    return wireLine(way, edge.open ? 'open' : side, edge) + labelOf(edge.lines, label);
  });
}

/** Half of the lines above the wire, the others below. */
const labelOf = (lines: readonly string[], { x, y }: Point): string => {
  const upper = above(lines);
  return (
    text(lines.slice(0, upper), x, y - upper * LINE - 0.3, 'name') + text(lines.slice(upper), x, y + 0.5)
  );
};

/** Distance of a frame from the coils in it [mm]. */
const MARGIN = 1.2;

/** A dashed frame around the coils of each bank, where no other coil lies between them. */
function frames({ symbols }: Graph, { corners }: Placed, { evaluation: e }: Result): string[] {
  const coils = [...corners].flatMap(([spot, { x, y }]) => {
    const { width, height } = symbols.get(spot) as Shape;
    return spot.coil === null
      ? []
      : [{ coil: spot.coil, left: x, top: y, right: x + width, bottom: y + height }];
  });
  return banks(e).flatMap((bank) => {
    const own = coils.filter(({ coil }) => bank.coils.has(coil));
    const left = Math.min(...own.map((c) => c.left)) - MARGIN;
    const top = Math.min(...own.map((c) => c.top)) - MARGIN;
    const right = Math.max(...own.map((c) => c.right)) + MARGIN;
    const bottom = Math.max(...own.map((c) => c.bottom)) + MARGIN;
    const strange = coils.some(
      (c) => !bank.coils.has(c.coil) && c.left < right && c.right > left && c.top < bottom && c.bottom > top,
    );
    return strange
      ? []
      : [
          `<rect class="bank" x="${mm(left)}" y="${mm(top)}" width="${mm(right - left)}" height="${mm(bottom - top)}" rx="2"/>`,
        ];
  });
}
