/** One place within a run that a meter is held across, by name: `fuse`, `relay`, `holder`, `joint 2`, `splice`, `plug 1`. */

import { PRESETS } from './defaults.ts';

/** What is needed of a run. */
interface Fitted {
  readonly joints?: number | undefined;
  readonly contacts?: number | undefined;
  readonly fuse?: unknown;
  readonly relay?: unknown;
}

export const ACROSS = ['fuse', 'holder', 'relay', 'joint', 'splice', 'plug'] as const;
export type AcrossKind = (typeof ACROSS)[number];

export const ACROSS_WORDS =
  'fuse (with its holder), holder (its contacts without the fuse), relay or contact (the contact of the relay), joint, splice, plug; of several with a number: joint 2';

/** What a place is, and which of several; null when it is none. */
export function acrossKind(place: string): { readonly kind: AcrossKind; readonly no: number } | null {
  const [, kind = '', no = '1'] = /^([a-z]+)(?: +(\d{1,3}))?$/.exec(place.trim()) ?? [];
  const found = kind === 'contact' ? 'relay' : ACROSS.find((one) => one === kind);
  return found === undefined ? null : { kind: found, no: Number(no) };
}

/** How many such places the run has. A splice is one of its joints. */
export function acrossCount(
  { joints = PRESETS.joints.value, contacts = 0, fuse, relay }: Fitted,
  kind: AcrossKind,
): number {
  switch (kind) {
    case 'fuse':
    case 'holder':
      return fuse ? 1 : 0;
    case 'relay':
      return relay ? 1 : 0;
    case 'plug':
      return contacts;
    default:
      return joints;
  }
}
