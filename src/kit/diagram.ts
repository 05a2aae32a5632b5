/**
 * The wiring diagram: the harness laid out from the battery on the left to the battery on the right, as SVG.
 * Black lines on white, for a page of A4 as well as of Letter, lying.
 *
 *   harness ─► graph ─► layout ─► symbols, wires, labels ─► SVG
 */
import type { Result } from '../findings/result.ts';
import { escaped } from '../pictures/elements.ts';
import { banks, type Graph, graphOf, LINE, ROOMS, type Shape } from './diagram-graph.ts';
import { above, type Placed, type Point, placed } from './diagram-layout.ts';
import { draw, joint, mm, text, wireLine } from './diagram-symbols.ts';
import { harnessOf } from './harness.ts';
import { released } from './release.ts';
import { textWidth, wrapText } from './text-size.ts';

/** What A4 and Letter have in common, lying, within margins of 10 mm. */
export const PAGE = { width: 259, height: 190 };
/** Above and below the drawing: title and status, notes. */
const HEAD = 16;
const FOOT = 11;
/** A small harness is not blown up beyond this. */
const LARGEST = 1.3;

const STYLE =
  'path,rect,circle{fill:none;stroke:#000;stroke-width:.35}' +
  'text{font-family:"DejaVu Sans",Verdana,Arial,sans-serif;text-anchor:middle;unicode-bidi:plaintext;fill:#000}' +
  '.feed,.return{stroke-width:.6}.open{stroke-dasharray:2 1.5}.bank{stroke-dasharray:1 1;stroke-width:.25}' +
  '.full{fill:#000}.name{font-weight:bold}';

const NOTES: readonly string[] = [
  'Lengths one way as in the design, without allowance. ____: not in the design, to be filled in. Lines that cross are not joined; a dot is a splice, a ring a common ground point.',
  'Terminal numbers of DIN 72552: 30 battery, 15 switched supply, 31 ground, 86 and 85 relay coil, 87 make contact. Pins of coils and sockets, and the polarity of a relay coil, go by the makers’ data sheets.',
  'The wires that tell each coil when to fire stay as they are. Where the driver sits outside the coil, the return starts at the driver’s ground.',
];

/** The diagram of a result. The same result gives the same text. */
export function wiringDiagram(result: Result): string {
  const harness = harnessOf(result.evaluation);
  const ways = ROOMS.map((rooms) => graphOf(harness, result.evaluation, rooms)).map((graph) => ({
    graph,
    place: placed(graph),
  }));
  const { graph, place } = ways.reduce((a, b) => (scaleOf(b.place) > scaleOf(a.place) ? b : a));
  return svg(graph, place, result);
}

const ROOM = { width: PAGE.width - 2, height: PAGE.height - HEAD - FOOT - 2 };
const scaleOf = ({ width, height }: Placed): number =>
  Math.min(LARGEST, ROOM.width / width, ROOM.height / height);

function svg(graph: Graph, place: Placed, result: Result): string {
  const { title } = result.evaluation.design;
  const { width, height } = place;
  const scale = scaleOf(place);
  const left = (PAGE.width - width * scale) / 2;
  const top = HEAD + 1 + (ROOM.height - height * scale) / 2;
  const status = released(result);
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${PAGE.width}mm" height="${PAGE.height}mm" viewBox="0 0 ${PAGE.width} ${PAGE.height}" role="img">`,
    '<!-- coilfeed-kit -->',
    `<title>${escaped(`Wiring diagram: ${title}`)}</title>`,
    `<style>${STYLE}</style>`,
    `<rect width="${PAGE.width}" height="${PAGE.height}" style="fill:#fff;stroke:none"/>`,
    text(heading(`Wiring diagram: ${title}`), PAGE.width / 2, 0, 'name', 3.6),
    status.ok ? '' : banner(status.words),
    `<g transform="translate(${mm(left)} ${mm(top)}) scale(${Number(scale.toFixed(4))})">`,
    ...wires(place, result),
    ...place.joints.map(joint),
    ...[...place.corners].map(
      ([spot, { x, y }]) =>
        `<g transform="translate(${mm(x)} ${mm(y)})">${draw(graph.symbols.get(spot) as Shape)}</g>`,
    ),
    ...frames(graph, place, result),
    '</g>',
    ...NOTES.flatMap((note) => wrapText(note, PAGE.width / 2.2)).map((note, i) =>
      text([note], PAGE.width / 2, PAGE.height - FOOT + i * 2.8, '', 2.2),
    ),
    '</svg>\n',
  ].join('\n');
}

/** A long title is cut: it stands in full on the other papers. */
function heading(title: string): string[] {
  const [first = '', ...rest] = wrapText(title, (PAGE.width - 20) / 3.6);
  return [rest.length > 0 ? `${first} …` : first];
}

const banner = (words: string): string =>
  `<rect x="20" y="6.2" width="${PAGE.width - 40}" height="7.6" style="stroke-width:.8"/>` +
  text([words], PAGE.width / 2, 7.2, 'name', Math.min(5, (PAGE.width - 50) / textWidth(words) / 1.15));

function wires(place: Placed, { evaluation: e }: Result): string[] {
  return place.wires.map(({ edge, way, label }) => {
    const side =
      edge.wire === null ? 'link' : (e.design.runs[e.design.wires[edge.wire]?.run ?? 0]?.side ?? 'link');
    return wireLine(way, edge.open ? 'open' : side) + labelOf(edge.lines, label);
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
