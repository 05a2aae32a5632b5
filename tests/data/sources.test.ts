/** How a citation reads in one line. */
import { expect, test } from 'vitest';
import { COMMON_PRACTICE, cite, fromMemory, printCitation, QUOTED } from '../../src/basis/sources.ts';

test.each([
  [cite('NEC', 'quoted', 'ch. 9 table 8'), 'NFPA 70, ch. 9 table 8 (quoted)'],
  [cite('IEC-60028', 'quoted'), 'IEC 60028 (quoted)'],
  [fromMemory('low', 'ISO-8820-5'), 'ISO 8820-5 (from memory, low confidence)'],
  [fromMemory('medium'), 'from memory, medium confidence'],
  [QUOTED, 'quoted, source not named'],
  [COMMON_PRACTICE, 'common practice'],
])('%o', (citation, line) => {
  expect(printCitation(citation)).toBe(line);
});
