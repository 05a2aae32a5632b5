/** Loaded before the model is used: makes one of its factors two percent larger, as a slip of the pen would. */
import { QUANTITIES, type QuantityName } from '../../src/model/model.ts';

const FACTOR = 1.02;
const name = process.env.COILFEED_MUTATION as QuantityName;
const q = QUANTITIES[name] as unknown as { kind: string; value?: number; formula?: string; mutated?: true };
// Without a name everything stays as it is. Once for a process, however many files of tests it runs.
if (q?.mutated === undefined && process.env.COILFEED_MUTATION) {
  if (q === undefined) throw new Error(`${name} is no quantity`);
  q.mutated = true;
  if (q.kind === 'constant') q.value = (q.value as number) * FACTOR;
  else if (q.kind === 'formula') q.formula = `IF(ISNUMBER(${q.formula}), ${FACTOR}*(${q.formula}), "")`;
  else throw new Error(`${name} is neither a constant nor a formula`);
}
