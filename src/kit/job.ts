/** What the papers of a kit are made from. */
import type { Result } from '../findings/result.ts';
import type { Harness } from './places.ts';

export interface Job {
  /** Its evaluation holds the subject `readings`, for the test card. */
  readonly result: Result;
  readonly harness: Harness;
  /** SHA-256 of the design's text, in hexadecimal. */
  readonly digest: string;
  /** Kits that are made at a time. */
  readonly batch: number;
  /** One for each kit; empty when none are given. */
  readonly serials: readonly string[];
  /** How tables for machines are written: in ASCII alone, with a byte order mark. */
  readonly csv?: { readonly ascii?: boolean; readonly mark?: boolean };
  /** The shop's logo as a data URL. */
  readonly logo?: string | null;
}

/** Kinds of pictures that every browser shows and a logo may be, by the end of their name. */
export const LOGOS: Readonly<Record<string, string>> = {
  png: 'image/png',
  jpg: 'image/jpeg',
  jpeg: 'image/jpeg',
  svg: 'image/svg+xml',
};

/** As much of the digest as a person compares. */
export const shortDigest = ({ digest }: Pick<Job, 'digest'>): string => digest.slice(0, 12);
