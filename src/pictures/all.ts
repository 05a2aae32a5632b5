/** Every picture that a design supports. */
import type { Evaluation } from '../engine/evaluate.ts';
import { whyNoTrace } from '../transient/circuit.ts';
import { traceOf } from '../transient/trace.ts';
import type { Picture } from './chart.ts';
import { fuseCurves } from './curve-lines.ts';
import { curvesPicture } from './curves.ts';
import { dropPicture } from './drop.ts';
import { speedPicture } from './speed.ts';
import { speedLines } from './speed-lines.ts';
import { tracePicture } from './trace.ts';
import { slugs } from './words.ts';

export interface Pictures {
  /** Named by what they show: `trace-limiter` for each point, `drop`, `speed`, `curves-main` for each fuse. */
  readonly pictures: readonly Picture[];
  /** What there is no picture of, and why. */
  readonly left: readonly { readonly name: string; readonly why: string }[];
}

/** The pictures of an evaluated design, in the order in which they are written. */
export function picturesOf(e: Evaluation): Pictures {
  const { design } = e;
  const pictures: Picture[] = [];
  const left: { name: string; why: string }[] = [];

  const why = whyNoTrace(e);
  if (why !== null) left.push({ name: 'trace', why });
  else {
    const names = slugs(design.points.map(({ name }) => name));
    for (const [point, name] of names.entries())
      pictures.push({ ...tracePicture(traceOf(e, point)), name: `trace-${name}` });
  }
  pictures.push(dropPicture(e));

  const lines = speedLines(e);
  if (lines === null) left.push({ name: 'speed', why: 'The design has no sweep.' });
  else pictures.push(speedPicture([lines], design.title));

  const found = fuseCurves(e);
  if (found.curves === null) left.push({ name: 'curves', why: found.why });
  else {
    const names = slugs(found.curves.map(({ name }) => name));
    for (const [i, curves] of found.curves.entries())
      pictures.push({ ...curvesPicture(curves, design.title), name: `curves-${names[i]}` });
  }
  return { pictures, left };
}
