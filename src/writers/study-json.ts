/** A study as JSON, and as a table of comma separated values. */
import type { Study } from '../study/study.ts';
import { turnsOf } from '../study/turns.ts';
import { keyEnding } from '../views/view.ts';
import { csv } from './csv.ts';

export const STUDY_FORMAT = 'coilfeed-study/1';

/** Values of quantities in SI units, areas in mm², temperatures in °C; null for what is not known. */
export function studyJson(study: Study) {
  const { design, vary, shown, rows } = study;
  return {
    format: STUDY_FORMAT,
    title: design.title,
    vary: vary.map(({ path, values }) => ({ path, values })),
    shown: shown.map(({ asked, name, label }) => ({ asked, quantity: name, label, ending: keyEnding(name) })),
    points: rows.map(({ values, verdict, why, found }) => ({ values, verdict, why, found })),
    turns: turnsOf(study),
  };
}

/** A row for each point; units stand behind the names as in JSON. */
export const studyCsv = ({ vary, shown, rows }: Study): string =>
  csv([
    [
      ...vary.map(({ path }) => path),
      'verdict',
      ...shown.map(({ asked, name }) => `${asked.trim().replaceAll(' ', '_')}${keyEnding(name)}`),
      'why',
    ],
    ...rows.map(({ values, verdict, why, found }) => [
      ...values,
      verdict,
      ...found.map((value) => (typeof value === 'boolean' ? (value ? 'yes' : 'no') : value)),
      why.join('; '),
    ]),
  ]);
