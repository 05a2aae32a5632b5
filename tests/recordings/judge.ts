/** What the tool makes of each form: read from a file as the command reads it. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { readRecordingFile } from '../../src/commands/recording.ts';
import { contraryTo } from '../../src/transient/measured/contrary.ts';
import { type MeasuredTrace, measureTrace } from '../../src/transient/measured/measure.ts';
import { scaleOf } from '../../src/transient/measured/scale.ts';
import { COIL, DESIGN, type Form } from './forms.ts';
import { chargeOf } from './signal.ts';

export interface Judged {
  readonly form: Form;
  readonly why: string | null;
  readonly measured: MeasuredTrace | null;
  readonly contrary: readonly string[];
  /** Shares by which peak, dwell, inductance and resistance are off. */
  readonly off: {
    readonly peak: number;
    readonly dwell: number;
    readonly inductance: number;
    readonly resistance: number;
  };
}

export async function judged(form: Form): Promise<Judged> {
  const folder = mkdtempSync(join(tmpdir(), 'coilfeed-recording-'));
  const file = join(folder, 'clamp.csv');
  writeFileSync(file, form.bytes());
  const text = await readRecordingFile(file);
  rmSync(folder, { recursive: true });
  const { scale, ...asked } = form.asked ?? {};
  const found = measureTrace(text, DESIGN, {
    ...asked,
    scale: scale === undefined ? undefined : (scaleOf(scale) ?? undefined),
  });
  const coil = form.coil ?? COIL;
  const off = (value: number | null, right: number): number =>
    value === null ? Number.NaN : value / right - 1;
  if (!found.ok)
    return {
      form,
      why: found.why,
      measured: null,
      contrary: [],
      off: { peak: 0, dwell: 0, inductance: 0, resistance: 0 },
    };
  const { peak, dwell, inductance, resistance } = found.value;
  return {
    form,
    why: null,
    measured: found.value,
    contrary: contraryTo(found.value, DESIGN),
    off: {
      peak: off(peak, chargeOf(coil).at(-1) as number),
      dwell: off(dwell, coil.dwell),
      inductance: off(inductance.value, coil.henry),
      resistance: off(resistance.value, coil.ohm),
    },
  };
}
