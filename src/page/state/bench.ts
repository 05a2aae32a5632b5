/**
 * The state of the page. The text of the design is the one truth: forms change it, undo walks through its versions,
 * and the worker answers for the newest one.
 */
import type { Path, Problem } from '../../design/problems.ts';
import { keyText } from '../../design/problems.ts';
import { readTree, type Tree } from '../../design/tree.ts';
import { edited } from '../../saved/apply.ts';
import type { Plain } from '../../saved/document.ts';
import type { Schema, View } from '../protocol.ts';
import { Client } from './client.ts';
import { begin, changed, type History, redone, settled, undone } from './history.ts';
import type { Storage, Stored, Wish } from './storage.ts';

export interface State {
  readonly history: History;
  /** The text as plain values, with places. */
  readonly tree: Tree;
  /** Name of the file, for messages and downloads. */
  readonly file: string;
  readonly schema: Schema | null;
  /** Of the newest text that could be judged; null before the first. */
  readonly view: View | null;
  /** What is wrong with the newest text that was answered. */
  readonly problems: readonly Problem[];
  /** The tool itself failed, with its words. */
  readonly failed: string | null;
  readonly busy: boolean;
  /** Counts answers. */
  readonly answers: number;
  readonly snapshot: View | null;
  readonly system: Wish;
  readonly look: Stored['look'];
  readonly offered: Stored | null;
}

/** Writing to storage waits for a pause in typing [ms]. */
const PAUSE = 300;

export class Bench {
  state: State;
  readonly client = new Client();
  private readonly storage: Storage;
  private readonly listeners = new Set<() => void>();
  /** The text that was asked for last. */
  private asked: string | null = null;
  private saving: ReturnType<typeof setTimeout> | undefined;

  constructor(start: { text: string; file: string }, storage: Storage) {
    this.storage = storage;
    const { stored, offered } = storage.open();
    const { text, file } = stored ?? start;
    this.state = {
      history: begin(text),
      tree: readTree(text, file),
      file,
      schema: null,
      view: null,
      problems: [],
      failed: null,
      busy: false,
      answers: 0,
      snapshot: null,
      system: stored?.system ?? 'design',
      look: stored?.look ?? 'auto',
      offered,
    };
    this.client.call('form', null).then(
      (schema) => this.put({ schema }),
      (error) => this.put({ failed: error.message }),
    );
    this.ask();
  }

  subscribe(listener: () => void): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }

  /** Puts a value into the design; undefined takes it out. Only while the text is sound. */
  edit(path: Path, value: Plain | undefined): void {
    const { history, tree } = this.state;
    if (!tree.sound) return;
    this.take(changed(history, edited(history.text, [{ key: path, value }]), keyText(path)));
  }

  /** The whole text, as it is typed. */
  write(text: string): void {
    this.take(changed(this.state.history, text, 'text'));
  }

  /** Another design in the place of this one; undo leads back. */
  load(text: string, file: string): void {
    this.put({ file });
    this.take(changed(this.state.history, text, null));
  }

  undo(): void {
    this.take(undone(this.state.history));
  }

  redo(): void {
    this.take(redone(this.state.history));
  }

  settle(): void {
    this.put({ history: settled(this.state.history) });
  }

  prefer(wish: Partial<Pick<State, 'system' | 'look'>>): void {
    this.put(wish);
    this.save();
  }

  keep(): void {
    this.put({ snapshot: this.state.view });
  }

  drop(): void {
    this.put({ snapshot: null });
  }

  /** Forgets what is stored on this machine. */
  clear(): void {
    clearTimeout(this.saving);
    this.saving = undefined;
    this.storage.clear();
    this.put({ offered: null });
  }

  takeOffered(): void {
    const { offered } = this.state;
    this.put({ offered: null });
    if (offered) this.load(offered.text, offered.file);
  }

  private put(part: Partial<State>): void {
    this.state = { ...this.state, ...part };
    for (const listener of this.listeners) listener();
  }

  private take(history: History): void {
    if (history === this.state.history) return;
    this.state = { ...this.state, history };
    // The worker begins while the page reads the text for itself.
    this.ask();
    this.put({ tree: readTree(history.text, this.state.file) });
    this.save();
  }

  private save(): void {
    clearTimeout(this.saving);
    this.saving = setTimeout(() => this.flush(), PAUSE);
  }

  /** Stores what waits to be stored. */
  flush(): void {
    if (this.saving === undefined) return;
    clearTimeout(this.saving);
    this.saving = undefined;
    const { history, file, system, look, offered } = this.state;
    // What is offered stands in the same place, and must not be lost before the person has chosen.
    if (offered === null) this.storage.save({ text: history.text, file, system, look });
  }

  /** One question at a time; when the answer comes, the newest text is next. */
  private async ask(): Promise<void> {
    if (this.state.busy) return;
    const { text } = this.state.history;
    if (text === this.asked) return;
    this.asked = text;
    this.put({ busy: true });
    const part = await this.answer(text);
    this.storage.started();
    this.put({ ...part, busy: false, answers: this.state.answers + 1 });
    this.ask();
  }

  private async answer(text: string): Promise<Partial<State>> {
    try {
      const answer = await this.client.call('design', { text, file: this.state.file });
      return answer.ok
        ? { view: answer.view, problems: [], failed: null }
        : { problems: answer.problems, failed: null };
    } catch (error) {
      return { failed: error instanceof Error ? error.message : String(error) };
    }
  }
}
