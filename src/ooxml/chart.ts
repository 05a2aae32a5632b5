/**
 * Charts that live in the workbook: every point is the value of a cell, so that they follow a changed input. Lines
 * differ by their dashes and marks by their shapes, so that a print in black and white can be read.
 */
import { escaped, HEAD, OFFICE } from './xml.ts';

export type Dash =
  | 'solid'
  | 'dash'
  | 'lgDash'
  | 'sysDash'
  | 'sysDot'
  | 'dashDot'
  | 'lgDashDot'
  | 'lgDashDotDot';
export type Mark = 'circle' | 'diamond' | 'square' | 'triangle';

export interface Series {
  /** The cell that holds its name. */
  readonly name: string;
  /** Ranges of cells, `Sheet!$B$6:$B$30`. */
  readonly x: string;
  readonly y: string;
  /** A line without marks, or marks without a line. */
  readonly drawn: { readonly dash: Dash; readonly points: number } | { readonly mark: Mark };
  /** Red, green, blue, two digits each. */
  readonly color: string;
}

export interface Axis {
  /** With the unit. */
  readonly title: string;
  readonly log?: true;
  readonly least?: number;
  readonly most?: number;
  readonly format: string;
}

interface Placed {
  readonly title: string;
  /** Rows and columns, counted from 0, from the first to the one behind the last. */
  readonly rows: readonly [number, number];
  readonly columns: readonly [number, number];
}

export interface Lines extends Placed {
  readonly kind: 'lines';
  readonly x: Axis;
  readonly y: Axis;
  readonly series: readonly Series[];
}

export interface Bars extends Placed {
  readonly kind: 'bars';
  /** The cell that holds what the bars are. */
  readonly name: string;
  readonly names: string;
  readonly values: string;
  /** What the values are, with the unit. */
  readonly axis: Axis;
}

export type Chart = Lines | Bars;

const DRAWING = 'http://schemas.openxmlformats.org/drawingml/2006';
const INK = '1F2933';
const GRID = 'D5DADF';
const BAR = '5F6B76';
/** Room for the names of the bars: left to itself a program may put them over the frame. Shares of the chart. */
const BAR_ROOM =
  '<c:layout><c:manualLayout><c:layoutTarget val="inner"/><c:xMode val="edge"/><c:yMode val="edge"/>' +
  '<c:x val="0.2"/><c:y val="0.14"/><c:w val="0.74"/><c:h val="0.66"/></c:manualLayout></c:layout>';
/** English metric units in a point. */
const EMU = 12700;

/** The part of one chart. */
export function chartXml(chart: Chart): string {
  const plot = chart.kind === 'lines' ? linesXml(chart) : barsXml(chart);
  return (
    `${HEAD}<c:chartSpace xmlns:c="${DRAWING}/chart" xmlns:a="${DRAWING}/main" xmlns:r="${OFFICE}">` +
    `<c:roundedCorners val="0"/><c:chart>${titleXml(chart.title, 11, true)}<c:autoTitleDeleted val="0"/>` +
    `<c:plotArea>${chart.kind === 'lines' ? '<c:layout/>' : BAR_ROOM}${plot}<c:spPr><a:noFill/>${lineXml('B8C0C8', 0.75)}</c:spPr></c:plotArea>` +
    (chart.kind === 'lines'
      ? `<c:legend><c:legendPos val="b"/><c:overlay val="0"/>${textXml(9)}</c:legend>`
      : '') +
    '<c:plotVisOnly val="0"/><c:dispBlanksAs val="gap"/></c:chart>' +
    `<c:spPr><a:solidFill><a:srgbClr val="FFFFFF"/></a:solidFill>${lineXml('B8C0C8', 0.75)}</c:spPr></c:chartSpace>`
  );
}

/** The part that places the charts of one sheet; the charts have the relationships `rId1` and so on. */
export function drawingXml(charts: readonly Chart[]): string {
  const corner = (name: string, row: number, column: number): string =>
    `<xdr:${name}><xdr:col>${column}</xdr:col><xdr:colOff>0</xdr:colOff><xdr:row>${row}</xdr:row><xdr:rowOff>0</xdr:rowOff></xdr:${name}>`;
  const anchors = charts.map(({ rows, columns, title }, i) =>
    [
      '<xdr:twoCellAnchor editAs="oneCell">',
      corner('from', rows[0], columns[0]),
      corner('to', rows[1], columns[1]),
      `<xdr:graphicFrame macro=""><xdr:nvGraphicFramePr><xdr:cNvPr id="${i + 2}" name="Chart ${i + 1}" descr="${escaped(title)}"/>`,
      '<xdr:cNvGraphicFramePr/></xdr:nvGraphicFramePr>',
      '<xdr:xfrm><a:off x="0" y="0"/><a:ext cx="0" cy="0"/></xdr:xfrm>',
      `<a:graphic><a:graphicData uri="${DRAWING}/chart"><c:chart r:id="rId${i + 1}"/></a:graphicData></a:graphic>`,
      '</xdr:graphicFrame><xdr:clientData/></xdr:twoCellAnchor>',
    ].join(''),
  );
  return (
    `${HEAD}<xdr:wsDr xmlns:xdr="${DRAWING}/spreadsheetDrawing" xmlns:a="${DRAWING}/main" ` +
    `xmlns:c="${DRAWING}/chart" xmlns:r="${OFFICE}">${anchors.join('')}</xdr:wsDr>`
  );
}

function linesXml({ series, x, y }: Lines): string {
  const all = series.map((one, i) => {
    const look =
      'dash' in one.drawn
        ? lineXml(one.color, one.drawn.points, one.drawn.dash)
        : '<a:ln w="19050"><a:noFill/></a:ln>';
    const mark =
      'mark' in one.drawn
        ? `<c:symbol val="${one.drawn.mark}"/><c:size val="9"/><c:spPr><a:solidFill><a:srgbClr val="${one.color}"/></a:solidFill>${lineXml(one.color, 0.75)}</c:spPr>`
        : '<c:symbol val="none"/>';
    return (
      `<c:ser><c:idx val="${i}"/><c:order val="${i}"/><c:tx><c:strRef><c:f>${one.name}</c:f></c:strRef></c:tx>` +
      `<c:spPr>${look}</c:spPr><c:marker>${mark}</c:marker>` +
      `<c:xVal><c:numRef><c:f>${one.x}</c:f></c:numRef></c:xVal><c:yVal><c:numRef><c:f>${one.y}</c:f></c:numRef></c:yVal>` +
      '<c:smooth val="0"/></c:ser>'
    );
  });
  return (
    `<c:scatterChart><c:scatterStyle val="lineMarker"/><c:varyColors val="0"/>${all.join('')}` +
    '<c:axId val="1"/><c:axId val="2"/></c:scatterChart>' +
    valueAxis(x, 1, 2, 'b', 'min', 'midCat') +
    valueAxis(y, 2, 1, 'l', 'min', 'midCat')
  );
}

function barsXml({ name, names, values, axis }: Bars): string {
  return (
    '<c:barChart><c:barDir val="bar"/><c:grouping val="clustered"/><c:varyColors val="0"/>' +
    `<c:ser><c:idx val="0"/><c:order val="0"/><c:tx><c:strRef><c:f>${name}</c:f></c:strRef></c:tx>` +
    `<c:spPr><a:solidFill><a:srgbClr val="${BAR}"/></a:solidFill>${lineXml(INK, 0.75)}</c:spPr><c:invertIfNegative val="0"/>` +
    `<c:dLbls><c:numFmt formatCode="${escaped(axis.format)}" sourceLinked="0"/><c:spPr><a:noFill/><a:ln><a:noFill/></a:ln></c:spPr>${textXml(9)}` +
    '<c:dLblPos val="outEnd"/><c:showLegendKey val="0"/><c:showVal val="1"/><c:showCatName val="0"/><c:showSerName val="0"/>' +
    '<c:showPercent val="0"/><c:showBubbleSize val="0"/></c:dLbls>' +
    `<c:cat><c:strRef><c:f>${names}</c:f></c:strRef></c:cat><c:val><c:numRef><c:f>${values}</c:f></c:numRef></c:val></c:ser>` +
    '<c:gapWidth val="50"/><c:axId val="1"/><c:axId val="2"/></c:barChart>' +
    // The first bar at the top.
    '<c:catAx><c:axId val="1"/><c:scaling><c:orientation val="maxMin"/></c:scaling><c:delete val="0"/><c:axPos val="l"/>' +
    '<c:numFmt formatCode="General" sourceLinked="0"/><c:majorTickMark val="none"/><c:minorTickMark val="none"/>' +
    `<c:tickLblPos val="nextTo"/><c:spPr>${lineXml(INK, 0.75)}</c:spPr>${textXml(9)}<c:crossAx val="2"/><c:crosses val="autoZero"/>` +
    '<c:auto val="0"/><c:lblAlgn val="ctr"/><c:lblOffset val="100"/><c:noMultiLvlLbl val="1"/></c:catAx>' +
    valueAxis(axis, 2, 1, 'b', 'max', 'between', 'nextTo')
  );
}

function valueAxis(
  axis: Axis,
  id: number,
  other: number,
  side: 'b' | 'l',
  crosses: 'min' | 'max',
  between: 'midCat' | 'between',
  labels: 'low' | 'nextTo' = 'low',
): string {
  const { title, log, least, most, format } = axis;
  return (
    `<c:valAx><c:axId val="${id}"/><c:scaling>${log ? '<c:logBase val="10"/>' : ''}<c:orientation val="minMax"/>` +
    `${most === undefined ? '' : `<c:max val="${most}"/>`}${least === undefined ? '' : `<c:min val="${least}"/>`}</c:scaling>` +
    `<c:delete val="0"/><c:axPos val="${side}"/><c:majorGridlines><c:spPr>${lineXml(GRID, 0.5)}</c:spPr></c:majorGridlines>` +
    `${titleXml(title, 9, false, side === 'l')}<c:numFmt formatCode="${escaped(format)}" sourceLinked="0"/>` +
    `<c:majorTickMark val="out"/><c:minorTickMark val="${log ? 'out' : 'none'}"/><c:tickLblPos val="${labels}"/>` +
    `<c:spPr>${lineXml(INK, 0.75)}</c:spPr>${textXml(9)}<c:crossAx val="${other}"/><c:crosses val="${crosses}"/>` +
    `<c:crossBetween val="${between}"/></c:valAx>`
  );
}

const lineXml = (color: string, points: number, dash: Dash = 'solid'): string =>
  `<a:ln w="${Math.round(points * EMU)}" cap="flat"><a:solidFill><a:srgbClr val="${color}"/></a:solidFill>` +
  `<a:prstDash val="${dash}"/><a:round/></a:ln>`;

const fontXml = (name: string, size: number, bold: boolean): string =>
  `<a:${name} lang="en" sz="${size * 100}" b="${bold ? 1 : 0}"><a:solidFill><a:srgbClr val="${INK}"/></a:solidFill>` +
  `<a:latin typeface="Arial"/></a:${name}>`;

const textXml = (size: number): string =>
  `<c:txPr><a:bodyPr/><a:lstStyle/><a:p><a:pPr>${fontXml('defRPr', size, false).replace(' lang="en"', '')}</a:pPr><a:endParaRPr lang="en"/></a:p></c:txPr>`;

const titleXml = (text: string, size: number, bold: boolean, upright = false): string =>
  `<c:title><c:tx><c:rich><a:bodyPr${upright ? ' rot="-5400000" vert="horz"' : ''}/><a:lstStyle/>` +
  `<a:p><a:r>${fontXml('rPr', size, bold)}<a:t>${escaped(text)}</a:t></a:r></a:p></c:rich></c:tx><c:overlay val="0"/></c:title>`;
