/** What a reading says by itself, and of no fault in particular: a battery at rest or while the starter turns, a hot place. */
import { asRead, printValue } from '../basis/print.ts';
import type { Evaluation } from '../engine/evaluate.ts';
import { atPosts } from './expected.ts';
import type { Judged } from './judge.ts';
import type { Mend } from './mend.ts';
import { subjectOf } from './places.ts';
import { triggerMends } from './trigger-mend.ts';

export const mendsByThemselves = (e: Evaluation, readings: readonly Judged[]): Mend[] => [
  ...triggerMends(e, readings),
  ...readings.flatMap((judged): Mend[] => {
    const { reading } = judged;
    if (reading.what === 'resting') return resting(e, judged);
    if (reading.what === 'supply' && reading.instrument === 'least') return cranking(e, judged);
    return reading.what === 'temperature' ? hot(e, judged) : [];
  }),
];

const none = { rule: null, cost: null } as const;
const volts = (value: number | null): string => asRead(value, 'V').join(' ');

/** The battery with everything off. */
function resting(e: Evaluation, { reading: { value }, stands, expected }: Judged): Mend[] {
  const flat = e.number('battery_flat') ?? 0;
  const common = { ...none, subject: 'battery' };
  if (stands === 'low')
    return [
      value < flat
        ? {
            ...common,
            harm: 'stop',
            says: 'The battery is nearly flat.',
            detail: `${volts(value)} at rest, where a full one has ${volts(expected.expected)} and one that is a quarter charged ${volts(flat)}. Charge it, let it rest for an hour and read again; if it falls back, replace it. Then look at what the alternator delivers.`,
          }
        : {
            ...common,
            harm: 'note',
            says: 'The battery is only partly charged.',
            detail: `${volts(value)} at rest, where a full one has ${volts(expected.expected)}. Charge it before anything else is read while the starter turns.`,
          },
    ];
  if (stands === 'high')
    return [
      {
        ...common,
        harm: 'note',
        says: 'The battery had not rested.',
        detail: `${volts(value)} is what it shows just after charging. Switch the headlamps on for two minutes, wait for five with everything off, and read again.`,
      },
    ];
  return [];
}

/** What a meter held while the starter turned, at the posts or at a coil. */
function cranking(e: Evaluation, { reading, stands, expected }: Judged): Mend[] {
  const { value } = reading;
  const point = e.design.points[reading.point ?? -1];
  const at = `at ${point?.name}`;
  if (!atPosts(reading))
    return stands === 'low'
      ? [
          {
            ...none,
            harm: 'spark',
            subject: subjectOf(e.design, reading),
            says: 'Too much voltage is lost on the way to this coil while the starter turns.',
            detail: `${volts(value)} was held ${at}, where at least ${volts(expected.low)} is expected. Read from battery positive to coil +, and from coil − to battery negative, in the same way: the side that loses more has the fault.`,
          },
        ]
      : [];
  const weak = e.number('battery_weak') ?? 0;
  const common = { ...none, subject: 'battery' };
  if (value < weak)
    return [
      {
        ...common,
        harm: 'stop',
        says: 'The battery breaks down while the starter turns.',
        detail: `${volts(value)} was held ${at}; a sound one stays above ${volts(weak)} at 20 °C. Charge it and test it under load; if it is good, look for a starter that drags and for its cables. ${statedDip(point)}`,
      },
    ];
  return stands === 'low'
    ? [
        {
          ...common,
          harm: 'note',
          says: 'The battery falls further than the design counts on while the starter turns.',
          detail: `${volts(value)} was held ${at}, where ${volts(expected.expected)} is stated. ${statedDip(point)}`,
        },
      ]
    : [];
}

const statedDip = (point: { readonly name: string } | undefined): string =>
  `Enter what was held as the dip of the point ${point?.name}: whether the relay holds is judged by that.`;

/** Hotter than the insulation stands, whatever makes it so. */
function hot(e: Evaluation, { reading }: Judged): Mend[] {
  const { run, id } = e.design.wires[reading.wire as number] as Evaluation['design']['wires'][number];
  const rating = e.number('rating', { run });
  if (reading.ambient == null || rating === null || reading.value <= rating) return [];
  const place = reading.across ? `${reading.across} of ${id}` : id;
  return [
    {
      ...none,
      harm: 'fire',
      subject: place,
      says: 'This place is hotter than the insulation of its wire withstands.',
      detail: `${printValue(reading.value, 'degC')} by the camera; the insulation is rated for ${printValue(rating, 'degC')}. Do not run it until the reason is found: read the drop across it under load.`,
    },
  ];
}
