/** An install as found, for the terminal: the verdict, what to mend in order of harm, readings. At most 80 columns. */
import { asRead, printRange } from '../basis/print.ts';
import type { Design } from '../design/design.ts';
import { heading, sentence, toldOnce } from '../findings/words.ts';
import type { Checked } from '../readings/check.ts';
import { SURE } from '../readings/diagnose.ts';
import { senseOf } from '../readings/instruments.ts';
import type { Judged } from '../readings/judge.ts';
import { HARM_WORDS } from '../readings/mend.ts';
import { instrumentWords, subjectOf } from '../readings/places.ts';
import type { Open } from '../readings/unknowns.ts';
import {
  causeShort,
  costSentence,
  nextSentence,
  onlyRatio,
  percent,
  ratiosSentence,
  readingSentence,
  unseenSentences,
} from '../readings/words.ts';
import type { Remedy } from '../remedies/remedy.ts';
import { labelOf } from '../views/print.ts';
import { CAUTIONS } from './cautions.ts';
import { bullet, columns, fold, WIDTH } from './columns.ts';
import { remedyLines } from './remedies.ts';
import { ownRows } from './report.ts';
import { VERDICT_WORDS } from './verdict.ts';

/** The report; `remedies` are those that were tried, the least change first. */
export function checkReport(c: Checked, remedies: readonly Remedy[] = []): string {
  const { design } = c.result.evaluation;
  const sections = [
    `${fold(design.title, WIDTH, '')}\n${fold(verdictLine(c), WIDTH, '')}`,
    ...(c.mend.length > 0 ? [`What to mend, worst first\n${mends(c)}`] : []),
    ...wouldPass(c, remedies),
    ...unknowns(c),
    ...advice(c),
    ...(c.result.own?.length ? [`The author’s own\n${ownRows(c.result.own)}`] : []),
    ...told(c),
    ...(c.readings.length > 0 ? [`Readings\n${readings(c)}`] : [`Readings\n${bullet(NO_READINGS)}`]),
    ...(c.readings.length > 0 && design.tolerance_assumed.length > 0
      ? [`Tolerances assumed where the design says nothing\n${bullet(assumed(c))}`]
      : []),
    `Cautions\n${CAUTIONS.map(bullet).join('\n')}`,
  ];
  return `${sections.join('\n\n')}\n`;
}

const NO_READINGS =
  'No readings were given. List them under "measured:" in the design; "--out FILE.xlsx" writes a test card that tells what ' +
  'to expect where.';

/** `FAIL  2 to mend, 31 rules pass`; without its word where the verdict stands beside it. */
export function verdictLine({ verdict, mend, result, readings: taken }: Checked): string {
  const broken = (result.own ?? []).filter((one) => one.verdict === 'fail').length;
  const unknown = result.findings.filter((f) => f.verdict === 'unknown').length;
  const told = result.findings.filter((f) => f.verdict === 'advice').length;
  const passing = result.findings.filter((f) => f.verdict === 'pass').length;
  const within = taken.filter(({ stands }) => stands === 'within').length;
  const parts = [
    mend.length === 0 ? 'nothing to mend' : `${mend.length} to mend`,
    ...(broken > 0 ? [`${broken} of the author’s own rules ${broken === 1 ? 'fails' : 'fail'}`] : []),
    ...(unknown > 0 ? [`${unknown} cannot be judged`] : []),
    ...(told > 0 ? [`${told} advice`] : []),
    `${passing} rules pass`,
    ...(taken.length > 0 ? [`${within} of ${taken.length} readings within their range`] : []),
  ];
  return `${VERDICT_WORDS[verdict]}  ${parts.join(', ')}`;
}

/** What was tried against the rules that fail; what readings point at is mended where they point. */
function wouldPass({ result: { findings, evaluation: e } }: Checked, remedies: readonly Remedy[]): string[] {
  if (findings.every(({ verdict }) => verdict !== 'fail')) return [];
  const body =
    e.design.unknowns.length > 0
      ? bullet('Changes are tried once every part is known.')
      : remedyLines(remedies, e.design.units);
  return [`What would pass\n${body}`];
}

function mends({ mend, result: { evaluation: e } }: Checked): string {
  return mend
    .map(({ harm, subject, says, detail, cost }, i) => {
      const no = `${i + 1}`.padStart(3);
      const title = `${no}  ${HARM_WORDS[harm]}${subject === 'feed' ? '' : `: ${subject}`}`;
      const told = cost === null ? '' : costSentence(e, cost);
      const costs = told === '' ? [] : [fold(told, WIDTH, '       ')];
      return [title, fold(says, WIDTH, '     '), fold(detail, WIDTH, '       '), ...costs].join('\n');
    })
    .join('\n');
}

function unknowns({ result: { findings, evaluation: e }, open: parts }: Checked): string[] {
  const open = findings.filter((f) => f.verdict === 'unknown');
  const lines = together(
    open.map((f) => {
      const of = parts.find(({ decides }) =>
        decides.some((d) => d.rule === f.rule && d.subject === f.subject),
      );
      return [
        heading(f),
        of === undefined ? sentence(f, e) : `depends on the unknown ${KINDS[of.unknown.kind]} of ${of.run}.`,
      ];
    }),
  );
  return [
    ...(parts.length > 0
      ? [`Unknown parts, most decisive first\n${parts.map((one) => bullet(unknownSentence(one))).join('\n')}`]
      : []),
    ...(open.length > 0 ? [`What cannot be judged, and what to look at\n${lines.join('\n')}`] : []),
  ];
}

function advice({ result: { findings, evaluation: e } }: Checked): string[] {
  const given = toldOnce(
    findings.filter((f) => f.verdict === 'advice'),
    e,
  );
  return given.length === 0
    ? []
    : [`Advice\n${given.map((one) => bullet(`${one.heading}: ${one.sentence}`)).join('\n')}`];
}

/** What is said alike of several is said once. */
function together(lines: readonly (readonly [string, string])[]): string[] {
  const said = new Map<string, Set<string>>();
  for (const [head, text] of lines) said.set(text, (said.get(text) ?? new Set()).add(head));
  return [...said].map(([text, heads]) => bullet(`${[...heads].join('; ')}: ${text}`));
}

/** `size of main: decides 8 rules. All of them pass from 14 AWG. Look at: …` */
export function unknownSentence({ unknown, run, consistent, offered, decides, look }: Open): string {
  const what = KINDS[unknown.kind];
  const [first, last] = [consistent?.[0], consistent?.at(-1)];
  const parts = [
    `${what} of ${run}: decides ${decides.length === 1 ? 'one rule' : `${decides.length} rules`}.`,
    ...(first === undefined ? [] : [`Readings leave ${first === last ? first : `${first} to ${last}`}.`]),
    ...(offered.length > 0 && decides.length > 0 ? [`${OFFERS[unknown.kind]} ${offered.join(', ')}.`] : []),
    `Look at: ${look}.`,
  ];
  return parts.join(' ').replaceAll('mm2', 'mm²');
}

const KINDS = {
  gauge: labelOf('gauge').toLowerCase(),
  bundle: 'bundle',
  fuse_type: labelOf('fuse_type').toLowerCase(),
  relay: 'relay',
} as const;
const OFFERS = {
  gauge: 'All of them pass from',
  bundle: 'All of them pass up to',
  fuse_type: 'All of them pass with type',
  relay: '',
} as const;

/** What may be wrong, what to measure next, and what the readings would not show. */
function told({ diagnosis, unseen, next, blind, result: { evaluation: e } }: Checked): string[] {
  const { suspects, sound } = diagnosis;
  const [likely] = suspects;
  const more = nextSentence(e, next, diagnosis, blind);
  const hidden = unseenSentences(e, unseen);
  return [
    ...(likely !== undefined && sound < SURE
      ? [
          `What may be wrong\n${bullet(`${suspects.map((c) => `${causeShort(e, c)}, ${percent(c.share)}`).join('; or ')}. Nothing may be wrong as well: ${percent(sound)}.`)}`,
        ]
      : []),
    ...(more === '' ? [] : [`What to measure next\n${bullet(more)}`]),
    ...(hidden.length > 0 ? [`What these readings would not show\n${hidden.map(bullet).join('\n')}`] : []),
  ];
}

const WORDS = { within: 'within', low: 'LOW', high: 'HIGH', unknown: 'unknown' } as const;

function readings({ readings: taken, diagnosis, result: { evaluation: e } }: Checked): string {
  const { design } = e;
  const rows = taken.map(({ reading, expected: x, stands }) => {
    const say = (value: number | null): string => asRead(value, x.unit, x.shown)[0];
    return [
      subjectOf(design, reading),
      reading.point === null ? '' : (design.points[reading.point]?.name ?? ''),
      instrumentWords(reading),
      say(reading.value),
      printRange(say(x.low), say(x.high)),
      asRead(0, x.unit, x.shown)[1],
      WORDS[stands],
    ];
  });
  const titles = ['Where', 'at', 'with', 'read', 'acceptable', '', ''];
  const table = columns(
    titles.map((title, i) => ({ title, align: i === 3 || i === 4 ? 'right' : 'left' })),
    rows,
  );
  const plain = taken.filter(onlyRatio);
  const many = plain.length > MANY ? plain : [];
  const told = [
    ...together(
      taken.flatMap((judged) => {
        const text = many.includes(judged) ? '' : readingSentence(judged);
        return text === '' ? [] : [[placeOf(judged, design), text] as const];
      }),
    ),
    ...(many.length === 0 ? [] : [bullet(ratiosSentence(many))]),
  ];
  const why = diagnosis.why === null ? [] : [diagnosis.why];
  return [table, ...told, ...why.map(bullet)].join('\n');
}

function placeOf({ reading }: Judged, design: Design): string {
  const point = reading.point === null ? '' : ` at ${design.points[reading.point]?.name}`;
  return `${subjectOf(design, reading)}${point}`;
}

/** From so many on readings of which only a ratio is to be said are told in one line. Arbitrary. */
const MANY = 3;

/** Of instruments those that were used. */
const assumed = ({ result, readings: taken }: Checked): string =>
  result.evaluation.design.tolerance_assumed
    .filter(
      ({ path }) =>
        !path.startsWith('instruments.') ||
        taken.some(({ reading }) => path === `instruments.${senseOf(reading.instrument)}`),
    )
    .map(({ path, value, why }) => `${path.replace(/^(tolerance|instruments)\./, '')} ${value} (${why})`)
    .join('; ');
