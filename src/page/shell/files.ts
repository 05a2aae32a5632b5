/** Opening files and saving them, all inside of the browser. */
import { LOGOS } from '../../kit/job.ts';
import type { Bench } from '../state/bench.ts';
import { askOnce } from '../state/client.ts';

const TYPES: Readonly<Record<string, string>> = {
  yaml: 'application/yaml',
  json: 'application/json',
  html: 'text/html',
  svg: 'image/svg+xml',
  csv: 'text/csv',
  zip: 'application/zip',
  xlsx: 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet',
};
export const endingOf = (name: string): string => name.split('.').at(-1) ?? '';

/** Name of what is made from a design, by that of its file: `feed.yaml` and `.xlsx` give `feed.xlsx`. */
export const named = (file: string, ending: string): string => `${file.replace(/\.\w+$/, '')}${ending}`;

/** Hands a file to the browser's downloads, of the type that its ending says. */
export function save(content: string | Uint8Array, name: string): void {
  const type = TYPES[endingOf(name)] ?? 'text/plain';
  const url = URL.createObjectURL(new Blob([content as BlobPart], { type }));
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  document.body.append(link);
  link.click();
  link.remove();
  // The browser reads it after the click.
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}

/** Id of the field by which files are chosen. */
export const CHOOSER = 'chooser';

/** Asks for a file, as *Open* does. */
export const chooseFile = (): void => document.getElementById(CHOOSER)?.click();

/** As much as the reader takes of a design; a workbook may be larger. */
const MOST_BYTES = 1024 * 1024;
const MOST_WORKBOOK = 64 * 1024 * 1024;

export type Opened =
  | { readonly ok: true; readonly text: string; readonly file: string }
  | { readonly ok: false; readonly why: string };

/** Opens files: a design in the place of the one at hand, a shop's file and its logo beside it. Says what came of it. */
export async function take(
  bench: Bench,
  files: readonly File[],
  say: (words: string) => void,
): Promise<void> {
  const told: string[] = [];
  for (const file of files.slice(0, MOST_FILES)) {
    const picture = LOGOS[endingOf(file.name).toLowerCase()];
    if (picture !== undefined && file.size <= MOST_BYTES) {
      bench.takeLogo(await urlOf(file, picture));
      told.push(`${file.name} is the shop’s logo on the papers now.`);
      continue;
    }
    const found = await openFile(file).catch((error): Opened => ({ ok: false, why: String(error) }));
    // What is being typed, until now, belongs to the design at hand, and not to that which comes.
    const at = document.activeElement;
    if (at instanceof HTMLInputElement || at instanceof HTMLTextAreaElement) at.blur();
    if (!found.ok) told.push(found.why);
    else if (isShop(found.text)) {
      bench.takeShop({ text: found.text, file: found.file });
      told.push(`${file.name} is the shop’s file now.`);
    } else {
      bench.load({ text: found.text, file: found.file, shop: null });
      told.push(`Opened ${file.name}.`);
    }
  }
  say(told.join(' '));
}

/** A design, the shop's file beside it, and its logo. */
const MOST_FILES = 3;

/** A file as a data URL of a type. */
const urlOf = (file: File, type: string): Promise<string> =>
  new Promise((done, failed) => {
    const reader = new FileReader();
    reader.onload = () => done(String(reader.result));
    reader.onerror = () => failed(reader.error);
    reader.readAsDataURL(new Blob([file], { type }));
  });

/** A shop's file has no version of the format, and lists of parts in its place. */
const isShop = (text: string): boolean =>
  !/^\s*["']?coilfeed["']?\s*:/m.test(text) &&
  /^["']?(shop|currency|coils|wire|fuses|holders|relays|terminals|splices|sleeves|labels|tools|instruments)["']?\s*:/m.test(
    text,
  );

/** The design of a file: text, or a workbook that coilfeed made and a person edited. */
async function openFile(file: File): Promise<Opened> {
  const workbook = /\.xlsx$/i.test(file.name);
  if (file.size > (workbook ? MOST_WORKBOOK : MOST_BYTES))
    return { ok: false, why: `“${file.name}” is too large for a design.` };
  const read = await file.arrayBuffer().catch(() => null);
  if (read === null)
    return { ok: false, why: `“${file.name}” cannot be read: it is a folder, or no longer there.` };
  const bytes = new Uint8Array(read);
  if (!workbook) {
    try {
      return { ok: true, text: new TextDecoder('utf-8', { fatal: true }).decode(bytes), file: file.name };
    } catch {
      return { ok: false, why: `“${file.name}” is not UTF-8 text.` };
    }
  }
  const saved = await askOnce('saved', { bytes, file: file.name }).reply;
  if (saved.ok) return { ok: true, text: saved.text, file: file.name.replace(/\.xlsx$/i, '.yaml') };
  const [first] = saved.problems;
  return { ok: false, why: `“${file.name}” cannot be used: ${first?.found}; ${first?.taken}` };
}
