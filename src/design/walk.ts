/**
 * The walk over a parsed YAML document: plain values, and the place of each key and value.
 *
 * It is our own, and not the YAML library's way of making objects, for four reasons: places fall out of the same
 * walk; duplicate keys are found in linear time (the library compares every pair of keys, which takes minutes for a
 * file of 1 MiB); keys such as `__proto__` never become properties; and the number of values is bounded while
 * aliases are followed, so that a few lines cannot stand for millions of values.
 */
import { isAlias, isMap, isScalar, isSeq, LineCounter } from 'yaml';
import { keyText, type Path, type Problem, quote } from './problems.ts';

/** Values in a file, aliases followed. The largest design that the limits of the format allow has about 3000. */
const MOST_VALUES = 20_000;
/** Aliases followed. A design that repeats a block for each of its runs and points stays below. */
const MOST_ALIASES = 100;
/** Nesting. The format needs 5. */
export const MOST_LEVELS = 12;
interface Spot {
  readonly key: number;
  readonly value: number;
}

export const idOf = (path: Path): string => JSON.stringify(path);

export class Walk {
  readonly spots = new Map<string, Spot>();
  readonly problems: Problem[] = [];
  readonly counter = new LineCounter();
  readonly file: string;
  private readonly anchors = new Map<string, unknown>();
  private values = 0;
  private aliases = 0;
  private full = false;
  /** True when a map holds what was meant for two: the rest of the second one is not known. */
  merged = false;

  get gaveUp(): boolean {
    return this.full;
  }

  constructor(file: string) {
    this.file = file;
  }

  at(offset: number): { line: number; column: number } {
    const { line, col } = this.counter.linePos(offset);
    return { line: Math.max(1, line), column: Math.max(1, col) };
  }

  report(offset: number, path: Path, found: string, taken: string): void {
    this.problems.push({ file: this.file, ...this.at(offset), key: keyText(path), found, taken });
  }

  /** Notes where the lines begin, of a text that the library is not to see. */
  note(text: string): void {
    this.counter.addNewLine(0);
    for (let at = text.indexOf('\n'); at >= 0; at = text.indexOf('\n', at + 1))
      this.counter.addNewLine(at + 1);
  }

  /** Gives up once, with one message: the rest of a file like that is not worth listing. */
  private stop(offset: number, path: Path, found: string, taken: string): undefined {
    if (!this.full) this.report(offset, path, found, taken);
    this.full = true;
    return undefined;
  }

  plain(node: unknown, path: Path, keyOffset: number, start: number): unknown {
    if (this.full) return undefined;
    const range = (node as { range?: readonly number[] | null } | null)?.range;
    const offset = range?.[0] ?? start;
    this.spots.set(idOf(path), { key: keyOffset, value: offset });
    this.values += 1;
    if (this.values > MOST_VALUES)
      return this.stop(
        offset,
        path,
        `more than ${MOST_VALUES} values`,
        'allowed: fewer, aliases counted as written out',
      );
    if (path.length > MOST_LEVELS)
      return this.stop(offset, path, 'values nested too deep', `allowed: ${MOST_LEVELS} levels`);
    if (isAlias(node)) return this.follow(node.source, path, keyOffset, offset);
    const value = this.content(node, path, offset);
    const anchor = (node as { anchor?: string } | null)?.anchor;
    if (anchor !== undefined) {
      if (this.anchors.has(anchor) && this.anchors.get(anchor) !== node)
        this.report(offset, path, `the anchor ${quote(anchor)} a second time`, 'name each anchor once');
      this.anchors.set(anchor, node);
    }
    return value;
  }

  private follow(name: string, path: Path, keyOffset: number, offset: number): unknown {
    this.aliases += 1;
    if (this.aliases > MOST_ALIASES)
      return this.stop(
        offset,
        path,
        `more than ${MOST_ALIASES} aliases`,
        'allowed: fewer, nested ones counted each time',
      );
    if (!this.anchors.has(name)) {
      this.report(
        offset,
        path,
        `an alias of ${quote(name)}`,
        'takes aliases of anchors that stand before them',
      );
      return undefined;
    }
    return this.plain(this.anchors.get(name), path, keyOffset, offset);
  }

  private content(node: unknown, path: Path, offset: number): unknown {
    if (isMap(node)) return this.map(node.items, path, offset);
    if (isSeq(node)) return node.items.map((item, i) => this.plain(item, [...path, i], offset, offset));
    return isScalar(node) ? node.value : null;
  }

  private map(
    items: readonly { key: unknown; value: unknown }[],
    path: Path,
    offset: number,
  ): Record<string, unknown> {
    const out: Record<string, unknown> = Object.create(null);
    for (const { key, value } of items) {
      const at = (key as { range?: readonly number[] | null } | null)?.range?.[0] ?? offset;
      if (!isScalar(key) || key.value === null || key.value === '') {
        this.report(at, path, 'a key that is not a word', 'takes plain words as keys');
        continue;
      }
      const name = String(key.value);
      const here = [...path, name];
      if (name === '__proto__')
        this.report(at, here, 'unknown key "__proto__"', 'takes the keys of the format');
      else if (Object.hasOwn(out, name)) {
        if (typeof path.at(-1) === 'number' && name === Object.keys(out)[0]) {
          this.merged = true;
          const taken = `start each member of the list with a dash: "- ${name}: …"`;
          this.report(at, here, `a second ${quote(name)} in one member`, taken);
          return out;
        }
        this.report(at, here, `the key ${quote(name)} a second time`, 'give each key once');
      } else {
        // Claimed before the walk goes on, so that a key whose value is refused still counts as given.
        out[name] = null;
        out[name] = this.plain(value, here, at, at);
      }
    }
    return out;
  }
}
