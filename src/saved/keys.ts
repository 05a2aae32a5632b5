/** Where in a design file the value of an input stands. The model names places in `Design`, which is laid out anew. */
import type { At, Axis } from '../basis/quantity.ts';
import type { Design } from '../design/design.ts';
import { runKey } from '../design/layout.ts';
import type { Path } from '../design/problems.ts';

/** The steps of a path of the model, `runs.{run}.fuse.type`, for the members at hand. */
const stepsOf = (path: string, at: At): (string | number)[] =>
  path.split('.').map((step) => {
    const axis = /^\{(\w+)\}$/.exec(step)?.[1];
    return axis === undefined ? step : (at[axis as Axis] as number);
  });

/** Key of the value of an input in the design file. */
export function keyOf(design: Design, path: string, at: At): Path {
  const [root, index, ...rest] = stepsOf(path, at);
  if (root === 'runs') return [...runKey(design, index as number), ...rest];
  if (root === 'wires') return [...wireKey(design, index as number), ...rest.slice(1)];
  if (root === 'events') return angleKey(design, index as number);
  if (root === 'ignition' && index === 'dwell' && design.ignition.dwell.length === 1 && rest[1] === 'dwell')
    return design.ignition.dwell[0]?.supply === null ? ['ignition', 'dwell'] : ['ignition', 'dwell', ...rest];
  return stepsOf(path, at);
}

/** Length of a conductor; of several of one run each has that of its coil. */
function wireKey(design: Design, index: number): Path {
  const { id, run, coils } = design.wires[index] as Design['wires'][number];
  const key = [...runKey(design, run), 'length'];
  return id === design.runs[run]?.name ? key : [...key, design.coils[coils[0] ?? 0]?.id ?? ''];
}

/** A firing of a listed coil is its own; elsewhere the angles are those of the cylinders, in firing order. */
function angleKey(design: Design, index: number): Path {
  const { coil, angle } = design.events[index] as Design['events'][number];
  if (design.ignition.layout === 'listed') {
    const earlier = design.events.slice(0, index).filter((event) => event.coil === coil).length;
    return ['ignition', 'coils', coil, 'fires_at', earlier];
  }
  const { firing_angles: angles } = design.engine;
  const own = ['coil_per_cylinder', 'wasted_coil_per_cylinder'].includes(design.ignition.layout);
  return ['engine', 'firing_angles', own ? coil : angles.indexOf(angle)];
}

/** Whether a firing is the second spark of a wasted coil, which follows from the first. */
export function isSecondSpark(design: Design, index: number): boolean {
  const { coil, angle } = design.events[index] as Design['events'][number];
  return design.ignition.layout === 'wasted_coil_per_cylinder' && design.engine.firing_angles[coil] !== angle;
}
