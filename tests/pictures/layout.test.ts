/** Every text of every picture can be read: inside of the picture, none on another. */
import { describe, expect, test } from 'vitest';
import { picturesOf } from '../../src/pictures/all.ts';
import type { Picture } from '../../src/pictures/picture.ts';
import { speedPicture } from '../../src/pictures/speed.ts';
import { speedLines } from '../../src/pictures/speed-lines.ts';
import { DESIGNS, demo, evaluated } from './designs.ts';
import { type Box, overlaps, sceneOf } from './scene.ts';

/** Boxes are those of the letters' height; a pixel is lost to rounding [px]. */
const HAIR = 1;

async function check(pictures: readonly Picture[]): Promise<void> {
  for (const picture of pictures) {
    const { texts, warnings, width, height } = await sceneOf(picture);
    expect(warnings, picture.name).toEqual([]);
    // Title, an axis and a label at least: were the scene not found, nothing could overlap.
    expect(texts.length, picture.name).toBeGreaterThan(10);
    expect(texts[0]?.right).toBeGreaterThan(0);
    expect(overlaps(texts, HAIR), picture.name).toEqual([]);
    const outside = texts.filter((t) => t.left < 0 || t.top < 0 || t.right > width || t.bottom > height);
    expect(outside, picture.name).toEqual([]);
  }
}

test('two texts on each other are found', () => {
  const box = (text: string, left: number): Box => ({ text, left, right: left + 20, top: 0, bottom: 10 });
  expect(overlaps([box('a', 0), box('b', 18), box('c', 38)], HAIR)).toEqual(['"a" on "b"']);
});

describe('designs that are hard to draw', () => {
  test.each(Object.keys(DESIGNS) as (keyof typeof DESIGNS)[])('%s', async (name) => {
    const { pictures } = picturesOf(evaluated(name));
    expect(pictures.length).toBeGreaterThan(1);
    await check(pictures);
  });
});

test.each(['hill-climb-six', 'two-bank-v8', 'pair-four'])('the demo %s', async (name) => {
  await check(picturesOf(demo(name)).pictures);
});

test('two designs in one picture', async () => {
  const of = (name: keyof typeof DESIGNS, label: string) => {
    const lines = speedLines(evaluated(name), label);
    if (lines === null) throw new Error('no sweep');
    return lines;
  };
  await check([
    speedPicture(
      [of('six coils', 'as it is now, with the old wire'), of('eight coils', 'as it is to be')],
      'Before and after',
    ),
  ]);
});

test('every picture says what it shows: title, axes with units', async () => {
  for (const picture of picturesOf(demo('two-bank-v8')).pictures) {
    const { texts } = await sceneOf(picture);
    const words = texts.map(({ text }) => text);
    expect(words).toContain('Sand racer, cross-plane V8 with a trunk for each bank');
    expect(words).toContain('Current in A');
    const other = { trace: 'Supply in V', speed: 'Energy in mJ', curves: 'Time in s' };
    expect(words).toContain(other[picture.name.split('-')[0] as keyof typeof other]);
  }
});
