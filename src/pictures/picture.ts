/** What a picture is: a Vega-Lite spec with its data inside, a name for its file, and words for who cannot see it. */
import type { TopLevelSpec } from 'vega-lite';
import type { Field } from 'vega-lite/types_unstable/channeldef.js';
import type { LayerSpec, UnitSpec } from 'vega-lite/types_unstable/spec/index.js';
import { config, LETTERS, type Theme, WIDTH } from './theme.ts';
import { wrapped } from './words.ts';

export interface Picture {
  /** What it shows, in small ASCII letters; `picturesOf` tells several of a kind apart. */
  readonly name: string;
  readonly title: string;
  /** One or two sentences on what is to be seen. */
  readonly description: string;
  readonly spec: TopLevelSpec;
}

/** A panel, or a layer of one. */
export type Layer = LayerSpec<Field> | UnitSpec<Field>;
export type Panel = LayerSpec<Field>;

export interface Frame {
  readonly name: string;
  readonly title: string;
  /** What is drawn, a line or two under the title. */
  readonly subtitle: string;
  readonly description: string;
}

/** Title and subtitle may reach over the labels beside the plots [px]. */
const HEAD = WIDTH + 140;

/** Puts panels one below the other under the title. */
export function picture(frame: Frame, panels: readonly Panel[], theme: Theme): Picture {
  const { name, title, subtitle, description } = frame;
  return {
    name,
    title,
    description,
    spec: {
      $schema: 'https://vega.github.io/schema/vega-lite/v6.json',
      title: {
        text: wrapped(title, HEAD, LETTERS.title),
        subtitle: wrapped(subtitle, HEAD, LETTERS.subtitle),
        fontSize: LETTERS.title,
        fontWeight: 'bold',
        lineHeight: 21,
        offset: 18,
      },
      description,
      vconcat: [...panels],
      config: config(theme),
    },
  };
}

/** Rows for a layer; no rows are an empty list, which draws nothing. */
export const rows = <T extends object>(values: readonly T[]): { values: T[] } => ({ values: [...values] });
