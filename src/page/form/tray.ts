/** The place below the form that tells of the field at hand. */
import { createContext } from 'preact';
import type { Path } from '../../design/problems.ts';

export interface Told {
  readonly path: Path;
  readonly name: string;
  readonly text: string;
}

/** Says which field is at hand. */
export const TrayContext = createContext<(told: Told) => void>(() => {});
