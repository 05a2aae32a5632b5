/** Designs of the protection tests: written as text, read by the reader, judged by the whole pipeline. */
import type { At } from '../../src/basis/quantity.ts';
import { readDesign } from '../../src/design/read.ts';
import type { Evaluation } from '../../src/engine/evaluate.ts';
import type { Finding } from '../../src/findings/finding.ts';
import { findings } from '../../src/findings/read.ts';
import type { RuleId } from '../../src/findings/rules.ts';
import { sentence } from '../../src/findings/words.ts';
import { run } from '../../src/run.ts';

/** A run as a design has it; what is left out is filled in by `runOf`. */
export type RunText = Record<string, unknown> & { run: string };

/** A run of 1 m, 10 AWG, class C, 60 °C, without joints. */
export const runOf = (own: RunText): RunText => ({
  carries: 'all',
  length: '1 m',
  ambient: '60 degC',
  insulation: 'C',
  gauge: '10 AWG',
  joints: 0,
  ...own,
});

/** Parts of a design that a test wants to be its own. */
export interface Parts {
  feed: RunText[];
  return?: RunText[];
  /** Cylinders, a coil for each: four by default. */
  cylinders?: number;
  coil?: Record<string, string>;
  points?: Record<string, string>[];
  supply?: Record<string, string>;
  sizes?: Record<string, string>;
  limits?: Record<string, string>;
}

/** Coils that draw next to nothing, so that every conductor is as warm as its place: less than a design may say. */
const FAINT = { resistance: '0.5 ohm', peak: '1 A', current_limit: '20 A' };
const FAINT_PEAK = 0.001;

/** A design of four coils with faint pulses, at 14 V and 9.6 V. */
export const designOf = ({ feed, cylinders = 4, ...parts }: Parts): object => ({
  coilfeed: 1,
  title: 'Protection',
  engine: {
    cylinders,
    stroke: 4,
    firing_order: Array.from({ length: cylinders }, (_, i) => i + 1),
  },
  ignition: { layout: 'coil_per_cylinder', dwell: '3 ms' },
  coil: parts.coil ?? FAINT,
  supply: parts.supply ?? { source_resistance: '8 mohm' },
  points: parts.points ?? [
    { name: 'cranking', rpm: '200 rpm', supply: '9.6 V' },
    { name: 'full', rpm: '6000 rpm', supply: '14 V' },
  ],
  ...(parts.sizes === undefined ? {} : { sizes: parts.sizes }),
  feed: feed.map(runOf),
  ...(parts.return === undefined ? {} : { return: parts.return.map(runOf) }),
  limits: { joint_resistance: '0 mohm', drop: '10 V', ...parts.limits },
});

/** A judged design. */
export interface Judged {
  e: Evaluation;
  /** A quantity that must be known: a case that yields no number fails. */
  number: (name: Parameters<Evaluation['number']>[0], at?: At) => number;
  /** Findings of a rule, of one subject where it is named; read anew after inputs were changed. */
  found: (rule: RuleId, subject?: string) => Finding[];
  /** The one finding of a rule for a subject. */
  finding: (rule: RuleId, subject?: string) => Finding;
  words: (finding: Finding) => string;
}

/** Reads, evaluates and judges; throws with every problem when the reader refuses the design. */
export function judge(design: object): Judged {
  const read = readDesign(JSON.stringify(design), 'design.json');
  if (!read.ok) throw new Error(`${JSON.stringify(read.problems)}\n${JSON.stringify(design)}`);
  const { evaluation: e } = run(read.design);
  if ((design as { coil?: unknown }).coil === FAINT) e.set('peak_alone', {}, FAINT_PEAK);
  const found = (rule: RuleId, subject?: string): Finding[] =>
    findings(e).filter((f) => f.rule === rule && (subject === undefined || f.subject === subject));
  return {
    e,
    number(name, at = {}) {
      const value = e.number(name, at);
      if (value === null) throw new Error(`${name} at ${JSON.stringify(at)} is unknown`);
      return value;
    },
    found,
    finding(rule, subject) {
      const [one, ...more] = found(rule, subject);
      if (!one || more.length > 0) throw new Error(`${1 + more.length} findings of ${rule} for ${subject}`);
      return one;
    },
    words: (finding) => sentence(finding, e),
  };
}

/** Index of a run by its name, and of a conductor by its id. */
export const runAt = (e: Evaluation, name: string): number => e.design.runs.findIndex((r) => r.name === name);
export const wireAt = (e: Evaluation, id: string): number => e.design.wires.findIndex((w) => w.id === id);
