/** Every text of every picture can be read: inside of the picture, none on another. */
import { describe, expect, test } from 'vitest';
import { picturesOf } from '../../src/pictures/all.ts';
import type { Picture } from '../../src/pictures/chart.ts';
import { spread } from '../../src/pictures/labels.ts';
import { LIGHT } from '../../src/pictures/look.ts';
import { speedPicture } from '../../src/pictures/speed.ts';
import { speedLines } from '../../src/pictures/speed-lines.ts';
import { drawStack, frameOf, toSvg } from '../../src/pictures/svg.ts';
import { DESIGNS, demo, evaluated } from './designs.ts';
import { type Box, measure, overlaps, type Scene, sceneOf } from './scene.ts';

/** Boxes are those of the letters' height; a pixel is lost to rounding [px]. */
const HAIR = 1;

/** A phone, half a screen, a screen [px]. */
const WIDTHS = [300, 560, 900];

/** The stacks of a picture as the page draws them, each by itself. */
const onPage = ({ stacks }: Picture, width: number): Scene[] => {
  const frame = frameOf(stacks, width, measure);
  return stacks.map((stack) => {
    const { svg, height } = drawStack(stack, frame, { theme: LIGHT, measure, id: 'x' });
    return sceneOf(`<svg viewBox="0 0 ${width} ${height}">${svg}</svg>`);
  });
};

function check(pictures: readonly Picture[]): void {
  for (const picture of pictures) {
    const scenes = [sceneOf(toSvg(picture, measure)), ...WIDTHS.flatMap((width) => onPage(picture, width))];
    for (const { texts, width, height } of scenes) {
      const where = `${picture.name}, ${width} px`;
      // An axis and a title at least: were the texts not found, nothing could overlap.
      expect(texts.length, where).toBeGreaterThan(5);
      expect(overlaps(texts, HAIR), where).toEqual([]);
      const outside = texts.filter(
        (t) => t.left < -HAIR || t.top < -HAIR || t.right > width + HAIR || t.bottom > height + HAIR,
      );
      expect(outside, where).toEqual([]);
    }
  }
}

test('two texts on each other are found', () => {
  const box = (text: string, left: number): Box => ({ text, left, right: left + 20, top: 0, bottom: 10 });
  expect(overlaps([box('a', 0), box('b', 18), box('c', 38)], HAIR)).toEqual(['"a" on "b"']);
});

test('labels stand where they want to where there is room, and a line apart where there is none', () => {
  expect(spread([10, 60], 100, 15)).toEqual([10, 60]);
  // Two that want the same place share what is lacking; the first one stays on top.
  expect(spread([50, 50], 100, 15)).toEqual([42.5, 57.5]);
  // At the end of the axis there is no room on one side.
  expect(spread([100, 100], 100, 15)).toEqual([85, 100]);
  expect(spread([0, 2, 90], 100, 15)).toEqual([0, 15, 90]);
});

describe('designs that are hard to draw', () => {
  test.each(Object.keys(DESIGNS) as (keyof typeof DESIGNS)[])('%s', (name) => {
    const { pictures } = picturesOf(evaluated(name));
    expect(pictures.length).toBeGreaterThan(1);
    check(pictures);
  });
});

test.each(['hill-climb-six', 'two-bank-v8', 'pair-four'])('the demo %s', (name) => {
  check(picturesOf(demo(name)).pictures);
});

test('two designs in one picture', () => {
  const of = (name: keyof typeof DESIGNS, label: string) => {
    const lines = speedLines(evaluated(name), label);
    if (lines === null) throw new Error('no sweep');
    return lines;
  };
  check([
    speedPicture(
      [of('six coils', 'as it is now, with the old wire'), of('eight coils', 'as it is to be')],
      'Before and after',
    ),
  ]);
});

test('every picture says what it shows: title, axes with units, and its words for who cannot see it', () => {
  for (const picture of picturesOf(demo('two-bank-v8')).pictures) {
    const svg = toSvg(picture, measure);
    const words = sceneOf(svg).texts.map(({ text }) => text);
    expect(words).toContain('Sand racer, cross-plane V8 with a trunk for each bank');
    // The label of an axis beside, that of one below.
    const axes = {
      trace: ['Current in A', 'Crank angle in °, below it time in ms'],
      drop: ['Drop in mV'],
      speed: ['Current in A', 'Engine speed in rpm'],
      curves: ['Time in s', 'Current in A'],
    }[picture.name.split('-')[0] as 'trace' | 'drop' | 'speed' | 'curves'];
    expect(words).toEqual(expect.arrayContaining(axes));
    expect(svg).toContain('role="img" aria-labelledby="title desc"');
    expect(svg).toMatch(/<title id="title">[^<]{20,}<\/title><desc id="desc">[^<]{60,}<\/desc>/);
  }
});

test('lines of one plot differ by more than their colour', () => {
  for (const { stacks } of picturesOf(demo('two-bank-v8')).pictures)
    for (const { parts, title } of stacks.flatMap(({ panels }) => panels)) {
      const named = parts.flatMap((part) => (part.kind === 'line' && part.label ? [part] : []));
      // Dashes by the style, marks or none, widths by the look.
      const looks = named.map(({ look, style = 0, marks = [] }) =>
        [look === 'strong' ? 'wide' : 'thin', style, marks.length > 0].join(' '),
      );
      expect(new Set(looks).size, title).toBe(looks.length);
    }
});
