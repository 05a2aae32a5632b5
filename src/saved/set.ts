/** Single values of a design changed by their paths, `feed.main.length=4 m`: in its text, which is then read anew. */
import type { Design } from '../design/design.ts';
import { readPath } from '../design/path.ts';
import { keyText, type Problem } from '../design/problems.ts';
import { type ReadResult, readDesign } from '../design/read.ts';
import { readTree } from '../design/tree.ts';
import { edited } from './apply.ts';
import { documentOf, type Plain } from './document.ts';

/** A place and what is to stand there, as they are written. An empty value takes what stands there out. */
export interface Setting {
  readonly path: string;
  readonly value: string;
}

/** `PATH=VALUE`; null when there is no equals sign. */
export function settingOf(text: string): Setting | null {
  const at = text.indexOf('=');
  return at < 1 ? null : { path: text.slice(0, at).trim(), value: text.slice(at + 1).trim() };
}

const NUMBER = /^[+-]?\d+(\.\d+)?$/;

/** A value as the text of a design holds it; lists and maps in brackets as YAML has them. */
function plainOf(text: string): Plain | undefined {
  if (text === '') return undefined;
  if (NUMBER.test(text)) return Number(text);
  return /^[[{]/.test(text) ? (documentOf(text).toJS() as Plain) : text;
}

/** The design with these values, or every problem with them. */
export function withSettings(design: Design, settings: readonly Setting[]): ReadResult {
  if (settings.length === 0) return { ok: true, design };
  const { value } = readTree(design.text.toString(), '');
  const read = settings.map((setting) => ({ ...setting, found: readPath(setting.path, value) }));
  const wrong = read.flatMap(({ path, found }) =>
    'path' in found ? [] : [problem(path, { key: '', ...found })],
  );
  if (wrong.length > 0) return { ok: false, problems: wrong };
  const edits = read.flatMap(({ value: text, found }) =>
    'path' in found ? [{ key: found.path, value: plainOf(text) }] : [],
  );
  const result = readDesign(edited(design.text.toString(), edits), '');
  if (result.ok) return result;
  const keys = edits.map(({ key }) => keyText(key));
  return {
    ok: false,
    problems: result.problems.map((p) => {
      const own = keys.findIndex(
        (key) => p.key === key || p.key.startsWith(`${key}.`) || p.key.startsWith(`${key}[`),
      );
      return problem(settings[own]?.path ?? settings.map(({ path }) => path).join(', '), p);
    }),
  };
}

/** The place is the setting and not a line of the file, which is sound. */
const problem = (path: string, { key, found, taken }: Pick<Problem, 'key' | 'found' | 'taken'>): Problem => ({
  file: path,
  line: 1,
  column: 1,
  cell: '',
  key: key === path ? '' : key,
  found,
  taken,
});
