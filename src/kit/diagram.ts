/**
 * The wiring diagram: the harness laid out from the battery on the left to the battery on the right, as SVG.
 * Black lines on white, for a page of A4 as well as of Letter, lying.
 *
 *   harness ─► graph ─► layout (ELK) ─► symbols, wires, labels ─► SVG
 */
import type { ElkNode } from 'elkjs/lib/elk-api.js';
import type { Result } from '../findings/result.ts';
import { banks, type Drawn, graphOf, ROOMS } from './diagram-graph.ts';
import { draw, mm, text, wireOf } from './diagram-symbols.ts';
import { escaped } from './escape.ts';
import { harnessOf } from './harness.ts';
import type { Harness } from './places.ts';
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
  'The wires that tell each coil when to fire stay as they are. Where the driver sits outside the coil, the return begins at the driver’s ground.',
];

/** The library's class, whose types do not say that it is the module itself. */
type Layout = new () => { layout(graph: ElkNode): Promise<ElkNode> };

/** The diagram of a result. The same result gives the same text. */
export async function wiringDiagram(result: Result): Promise<string> {
  const harness = harnessOf(result.evaluation);
  // Loaded here: the library is large, and nothing else needs it.
  const Elk = (await import('elkjs/lib/elk.bundled.js')).default as unknown as Layout;
  const elk = new Elk();
  const ways: [ElkNode, Drawn][] = [];
  for (const rooms of ROOMS) {
    const drawn = graphOf(harness, result.evaluation, rooms);
    ways.push([await elk.layout(drawn.graph), drawn]);
  }
  const [placed, drawn] = ways.reduce((a, b) => (scaleOf(b[0]) > scaleOf(a[0]) ? b : a));
  return svg(placed, drawn, harness, result);
}

const ROOM = { width: PAGE.width - 2, height: PAGE.height - HEAD - FOOT - 2 };
const scaleOf = ({ width = 1, height = 1 }: ElkNode): number =>
  Math.min(LARGEST, ROOM.width / width, ROOM.height / height);

function svg(placed: ElkNode, drawn: Drawn, harness: Harness, result: Result): string {
  const { title } = result.evaluation.design;
  const [width, height] = [placed.width ?? 1, placed.height ?? 1];
  const scale = scaleOf(placed);
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
    ...wires(placed, drawn, harness, result),
    ...nodes(placed, drawn, harness),
    ...frames(placed, harness, result),
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

function wires(placed: ElkNode, { labels }: Drawn, harness: Harness, { evaluation: e }: Result): string[] {
  return (placed.edges ?? []).map((edge) => {
    const index = Number(edge.id.slice(1));
    const wire = edge.id.startsWith('e') ? (harness.pieces[index]?.wire ?? null) : null;
    const open = edge.id.startsWith('l') && harness.links[index]?.open === true;
    const side = wire === null ? null : e.design.runs[e.design.wires[wire]?.run ?? 0]?.side;
    const label = edge.labels?.[0];
    const words =
      label === undefined
        ? ''
        : text(labels.get(edge.id) ?? [], (label.x ?? 0) + (label.width ?? 0) / 2, label.y ?? 0, 'name');
    return wireOf(edge, open ? 'open' : (side ?? 'link')) + words;
  });
}

function nodes(placed: ElkNode, { symbols }: Drawn, harness: Harness): string[] {
  return (placed.children ?? []).flatMap((node) => {
    const spot = harness.spots[Number(node.id.slice(1))];
    const symbol = spot && symbols.get(spot.id);
    return symbol === undefined
      ? []
      : [`<g transform="translate(${mm(node.x ?? 0)} ${mm(node.y ?? 0)})">${draw(symbol)}</g>`];
  });
}

/** Distance of a frame from the coils in it [mm]. */
const MARGIN = 1.2;

/** A dashed frame around the coils of each bank, where no other coil lies between them. */
function frames(placed: ElkNode, harness: Harness, { evaluation: e }: Result): string[] {
  const coils = (placed.children ?? []).flatMap((node) => {
    const coil = harness.spots[Number(node.id.slice(1))]?.coil ?? null;
    const { x = 0, y = 0, width = 0, height = 0 } = node;
    return coil === null ? [] : [{ coil, left: x, top: y, right: x + width, bottom: y + height }];
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
