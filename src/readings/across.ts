/** What one place within a conductor should have. */
import { acrossKind } from '../design/across.ts';
import type { Evaluation } from '../engine/evaluate.ts';

/** Expected resistance of a place within a conductor [ohm]. */
export function acrossOhm(e: Evaluation, wire: number, across: string): number {
  const { run } = e.design.wires[wire] as Evaluation['design']['wires'][number];
  const parallel = e.design.runs[run]?.conductors ?? 1;
  switch (acrossKind(across)?.kind) {
    case 'fuse':
      return e.number('fuse_ohm', { run }) ?? 0;
    case 'holder':
      return e.number('holder_ohm', { run }) ?? 0;
    case 'relay':
      return e.number('contact_ohm', { run }) ?? 0;
    case 'plug':
      return (e.number('plug_ohm') ?? 0) / parallel;
    default:
      return (e.number('joint_ohm') ?? 0) / parallel;
  }
}
