/** Under which size a wire is sold. */
import { SAE_TYPES } from './names.ts';
import { readSize } from './spellings.ts';

/** A type of SAE J1128 or J1127 is sold by SAE number; under the same number AWG holds more copper. */
export function asSold(size: string, insulation: string): string {
  const [number, series] = size.split(' ');
  const sold = `${number} SAE`;
  return series === 'AWG' && SAE_TYPES.includes(insulation) && readSize(sold) !== null ? sold : size;
}
