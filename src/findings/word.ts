/** What the words of a finding are made from. */
import type { At } from '../basis/quantity.ts';
import type { QuantityName } from '../model/model.ts';

/** What a sentence may say of a finding, already printed. */
export interface Facts {
  readonly subject: string;
  readonly value: string;
  readonly limit: string;
  /** Any quantity of the subject, printed with its unit; nothing when it is not known. */
  readonly say: (name: QuantityName, at?: At) => string | undefined;
  /** Whether a flag of the subject is set. */
  readonly is: (name: QuantityName, at?: At) => boolean;
}

export interface Words {
  readonly title: string;
  readonly pass: (f: Facts) => string;
  readonly fail: (f: Facts) => string;
  /** What is not known, and what to look up. */
  readonly unknown: (f: Facts) => string;
}
