/** Elements of SVG as text. */
import type { Theme } from './look.ts';

/** What a text may hold and XML may not. */
const NOT_XML = /[^\t\n\r -\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]/gu;

const SIGNS: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };

/** A person's text inside of an element or an attribute. */
export const escaped = (text: string): string =>
  text.replace(NOT_XML, '\ufffd').replace(/[&<>"]/g, (sign) => SIGNS[sign] as string);

type Values = Readonly<Record<string, string | number | undefined>>;

/** One element; numbers are places [px], to a tenth. What is inside is markup. */
export function element(name: string, values: Values, inside = ''): string {
  const written = Object.entries(values).map(([key, value]) => {
    if (value === undefined || value === '') return '';
    return ` ${key}="${typeof value === 'number' ? Math.round(value * 10) / 10 : escaped(value)}"`;
  });
  return inside === '' ? `<${name}${written.join('')}/>` : `<${name}${written.join('')}>${inside}</${name}>`;
}

/** A path without a filling. */
export const stroked = (d: string, color: string, width: number, dashes = ''): string =>
  element('path', { d, fill: 'none', stroke: color, 'stroke-width': width, 'stroke-dasharray': dashes });

/** The commands of a path; numbers are places [px], to a tenth. */
export const path = (parts: TemplateStringsArray, ...places: readonly number[]): string =>
  String.raw({ raw: parts }, ...places.map((place) => place.toFixed(1)));

/** Sizes of letters [px]. */
export const SIZE = { title: 16, text: 12, small: 11 } as const;

interface Lettering {
  readonly color: keyof Theme;
  readonly size?: number;
  readonly anchor?: 'middle' | 'end';
  readonly bold?: boolean;
  /** Turned so that it is read from below. */
  readonly upward?: boolean;
}

/** A text that starts, ends or has its middle at a place [px]; small letters when no size is named. */
export const lettered = (
  text: string,
  x: number,
  y: number,
  theme: Theme,
  { color, size = SIZE.small, anchor, bold, upward }: Lettering,
): string =>
  element(
    'text',
    {
      x,
      y,
      'font-size': size,
      'font-weight': bold ? 'bold' : '',
      'text-anchor': anchor,
      fill: theme[color],
      transform: upward ? path`rotate(-90 ${x} ${y})` : '',
    },
    escaped(text),
  );
