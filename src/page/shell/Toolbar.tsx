/** What is done with the design as a whole. */
import { useRef, useState } from 'preact/hooks';
import { asYaml } from '../../saved/apply.ts';
import { useBench, useBenchState } from '../state/use.ts';
import { openFile, save, workbookOf } from './files.ts';

export interface Demo {
  readonly name: string;
  readonly text: string;
}

const XLSX = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet';

export function Toolbar({ demos }: { readonly demos: readonly Demo[] }) {
  const bench = useBench();
  const { history, file, tree, problems, view, busy } = useBenchState();
  const [said, say] = useState('');
  const chooser = useRef<HTMLInputElement>(null);
  const sound = tree.sound && problems.length === 0;
  const open = async (chosen: File | undefined): Promise<void> => {
    if (chosen === undefined) return;
    const found = await openFile(chosen).catch((error) => ({ ok: false as const, why: String(error) }));
    if (found.ok) bench.load(found.text, found.file);
    say(found.ok ? `Opened ${chosen.name}.` : found.why);
  };
  const workbook = async (): Promise<void> => {
    say('The workbook is being made …');
    try {
      save(await workbookOf(history.text), file.replace(/\.\w+$/, '.xlsx'), XLSX);
      say('The workbook is in the downloads.');
    } catch (error) {
      say(`The workbook could not be made: ${error instanceof Error ? error.message : String(error)}`);
    }
  };
  const saveText = (): void => {
    save(
      tree.sound ? asYaml(history.text) : history.text,
      file.replace(/\.\w+$/, '.yaml'),
      'application/yaml',
    );
    say('The design is in the downloads.');
  };
  const saveResult = (): void => {
    if (view === null) return;
    save(`${JSON.stringify(view.json, null, 2)}\n`, file.replace(/\.\w+$/, '.json'), 'application/json');
    say('The result is in the downloads, as the command line prints it.');
  };
  return (
    <div class="toolbar" role="toolbar" aria-label="Design">
      <select
        aria-label="Start from a demo"
        value=""
        onChange={(event) => {
          const demo = demos.find(({ name }) => name === event.currentTarget.value);
          if (demo) {
            bench.load(demo.text, demo.name);
            say(`Started from the demo ${demo.name}.`);
          }
          event.currentTarget.value = '';
        }}
      >
        <option value="">Start from a demo …</option>
        {demos.map(({ name }) => (
          <option key={name} value={name}>
            {name.replace(/\.yaml$/, '')}
          </option>
        ))}
      </select>
      <button type="button" onClick={() => chooser.current?.click()}>
        Open …
      </button>
      <input
        ref={chooser}
        type="file"
        hidden
        accept=".yaml,.yml,.json,.xlsx"
        onChange={(event) => {
          open(event.currentTarget.files?.[0]);
          // The same file can be opened again.
          event.currentTarget.value = '';
        }}
      />
      <button type="button" onClick={saveText}>
        Save YAML
      </button>
      <button type="button" disabled={!sound} onClick={workbook}>
        Workbook
      </button>
      <button type="button" disabled={!sound || busy} onClick={saveResult}>
        Result
      </button>
      <button type="button" onClick={() => print()}>
        Print
      </button>
      <button type="button" disabled={history.past.length === 0} onClick={() => bench.undo()}>
        Undo
      </button>
      <button type="button" disabled={history.future.length === 0} onClick={() => bench.redo()}>
        Redo
      </button>
      <span class="said" role="status">
        {said}
      </span>
    </div>
  );
}
