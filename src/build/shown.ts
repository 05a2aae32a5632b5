/** The pictures that README.md shows: wiring and currents of a demo, as the commands draw them. */
import { readFileSync } from 'node:fs';
import { drawn } from '../commands/pictures.ts';
import { readDesign } from '../design/read.ts';
import { PAGE, wiringDiagram } from '../kit/diagram.ts';
import { picturesOf } from '../pictures/all.ts';
import { run } from '../run.ts';

const DEMO = 'hill-climb-six.yaml';
/** [mm] The part of the sheet that holds the wires of this demo: without the title and the notes for the shop. */
const PART = { top: 44, height: 106 };

/** By their names under docs/. */
export async function shownPictures(): Promise<Readonly<Record<string, string>>> {
  const read = readDesign(readFileSync(`workbooks/${DEMO}`, 'utf8'), DEMO, {
    text: readFileSync('workbooks/shop.yaml', 'utf8'),
    file: 'shop.yaml',
  });
  if (!read.ok) throw new Error('the demo is refused');
  const result = run(read.design);
  const picture = picturesOf(result.evaluation).pictures.find(({ name }) => name === 'trace-limiter');
  if (picture === undefined) throw new Error('the demo has no point named limiter');
  const [currents] = await drawn(picture, ['svg']);
  const sheet = `width="${PAGE.width}mm" height="${PAGE.height}mm" viewBox="0 0 ${PAGE.width} ${PAGE.height}"`;
  const part = `width="${PAGE.width}mm" height="${PART.height}mm" viewBox="0 ${PART.top} ${PAGE.width} ${PART.height}"`;
  const wiring = wiringDiagram(result);
  if (!wiring.includes(sheet)) throw new Error('the diagram has another size');
  return {
    'wiring.svg': wiring.replace(sheet, part),
    'currents.svg': new TextDecoder().decode(currents?.bytes),
  };
}
