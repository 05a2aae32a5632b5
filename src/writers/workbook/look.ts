/** Lines and marks of the charts in a workbook, in the colours, widths and dashes of the pictures. */
import type { Dash, Series } from '../../ooxml/chart.ts';
import type { Look } from '../../pictures/chart.ts';
import { LIGHT, STROKES } from '../../pictures/look.ts';

/** The dashes of the pictures, in their order, by the names of Open XML. */
const DASHES: readonly Dash[] = ['solid', 'dash', 'sysDot', 'dashDot', 'lgDash', 'lgDashDotDot'];
/** Points of a pixel: 72 and 96 to the inch. */
const POINTS = 72 / 96;

type Drawn = Pick<Series, 'drawn' | 'color'>;

const colorOf = (look: Look): string => LIGHT[STROKES[look][0]].slice(1).toUpperCase();

/** A line in a look, with the dashes of number `style`; they start again when they are used up. */
export const lineIn = (look: Look, style = 0): Drawn => ({
  drawn: { dash: DASHES[style % DASHES.length] as Dash, points: STROKES[look][1] * POINTS },
  color: colorOf(look),
});

export const markIn = (look: Look, mark: Extract<Series['drawn'], { mark: unknown }>['mark']): Drawn => ({
  drawn: { mark },
  color: colorOf(look),
});
