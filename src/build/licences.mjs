/**
 * Licences of what is shipped: packages inside the bundles, and packages that are installed beside them.
 * `npm run licences` lists them.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { ROOT } from './bundle.mjs';

/**
 * Licences whose works may be part of a work under GPL-3.0-only, after the list of the Free Software Foundation (from
 * memory, certain). What is not among them is asked about by a person before it is added.
 */
const COMPATIBLE = new Set([
  '0BSD',
  'Apache-2.0',
  'BSD-2-Clause',
  'BSD-3-Clause',
  'CC0-1.0',
  'GPL-3.0-only',
  'GPL-3.0-or-later',
  'ISC',
  'MIT',
  'MPL-2.0',
  'Unlicense',
  'Zlib',
]);

/** Licences that a package states in words, in SPDX's terms. */
const IN_WORDS = {
  // Bitstream Vera fonts: https://spdx.org/licenses/Bitstream-Vera.html. Free to ship inside a larger program; what was
  // changed for DejaVu is in the public domain. Data that is drawn with, no part of the program.
  'dejavu-fonts-ttf': 'Bitstream-Vera',
};
/** Beside the program and no part of it. */
const BESIDE = new Set(['Bitstream-Vera']);

/** Whether a work under this licence, an SPDX expression, may be shipped with ours. */
export function isCompatible(licence) {
  const words = licence.replace(/[()]/g, ' ').trim();
  if (/\sOR\s/.test(words)) return words.split(/\sOR\s/).some((one) => isCompatible(one));
  return words.split(/\sAND\s/).every((one) => COMPATIBLE.has(one.trim()) || BESIDE.has(one.trim()));
}

function licenceOf(name) {
  const folder = `${ROOT}node_modules/${name}`;
  const { version, license } = JSON.parse(readFileSync(`${folder}/package.json`, 'utf8'));
  const file = readdirSync(folder).find((one) => /^licen[cs]e/i.test(one));
  const licence = IN_WORDS[name] ?? (typeof license === 'string' ? license : 'not stated');
  return { name, version, licence, text: file ? readFileSync(`${folder}/${file}`, 'utf8').trim() : null };
}

/** What the lock file installs beside the bundles, for every kind of machine. */
export function installed() {
  const { packages } = JSON.parse(readFileSync(`${ROOT}package-lock.json`, 'utf8'));
  return Object.entries(packages)
    .filter(([path, { dev, link }]) => path !== '' && !dev && !link)
    .map(([path, { version, license }]) => {
      const name = path.replace(/^.*node_modules\//, '');
      return { name, version, licence: IN_WORDS[name] ?? license ?? 'not stated' };
    });
}

/** Name, version and licence of these packages, with their texts as they ask for; the GPL is that of the whole. */
export const notices = (packages) =>
  [...packages]
    .sort()
    .map(licenceOf)
    .map(({ name, version, licence, text }) =>
      [`${name} ${version}, ${licence}`, ...(text === null || /GPL/.test(licence) ? [] : [text])].join(
        '\n\n',
      ),
    )
    .join('\n\n----\n\n');

/**
 * Everything that is shipped, a line each: name, version, licence, and whether it is bundled. Throws when one of them
 * may not be shipped with ours.
 */
export function shipped(bundled) {
  const all = [
    ...[...bundled].map((name) => ({ ...licenceOf(name), where: 'bundled' })),
    ...installed().map((one) => ({ ...one, where: 'installed' })),
  ].sort((a, b) => (a.name < b.name ? -1 : 1));
  const wrong = all.filter(({ licence }) => !isCompatible(licence));
  if (wrong.length > 0)
    throw new Error(
      `not compatible with GPL-3.0-only: ${wrong.map(({ name, licence }) => `${name} (${licence})`).join(', ')}`,
    );
  return all.map(({ name, version, licence, where }) => `${name} ${version}  ${licence}  ${where}`);
}
