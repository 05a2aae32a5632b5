/** What is done with the design as a whole. */
import { useEffect } from 'preact/hooks';
import { asYaml } from '../../saved/apply.ts';
import type { Given } from '../protocol.ts';
import { shopOf, wholeView } from '../state/bench.ts';
import { useBench, useBenchState, useCurrent, useGuessed, useVerdict } from '../state/use.ts';
import { CHOOSER, chooseFile, named, save, take } from './files.ts';
import { Making, useMaking } from './Making.tsx';
import { Menu } from './Menu.tsx';
import { Settings } from './Settings.tsx';

interface ToolbarProps {
  readonly demos: readonly Given[];
  readonly said: string;
  readonly say: (words: string) => void;
  /** Asks the questions of a new feed. */
  readonly start: () => void;
}

const WORKBOOK = 'The workbook';

export function Toolbar({ demos, said, say, start }: ToolbarProps) {
  const bench = useBench();
  const { history, tree, busy, shop } = useBenchState('history', 'tree', 'busy', 'shop');
  const open = useVerdict() === 'open';
  // As the command: of parts that are not known there is no result, only what the readings say.
  const guessed = useGuessed();
  const { file, text, shop: came } = history.now;
  const current = useCurrent();
  const sound = tree.sound && current;
  const { make, stop } = useMaking(WORKBOOK, say);
  // What was said goes with what is done next: on a phone it lies over the answer.
  useEffect(() => {
    if (said === '' || stop !== null) return;
    const away = (): void => say('');
    addEventListener('click', away);
    return () => removeEventListener('click', away);
  }, [said, stop, say]);
  const saveText = (): void => {
    save(tree.sound ? asYaml(text) : text, named(file, '.yaml'));
    say('The design is in the downloads.');
  };
  const saveResult = (): void => {
    const whole = wholeView(bench.state);
    if (whole === null) return;
    save(`${JSON.stringify(whole.json, null, 2)}\n`, named(file, '.json'));
    say('The result is in the downloads, as the command line prints it.');
  };
  return (
    <div class="toolbar" role="toolbar" aria-label="Design">
      <Menu name="Open">
        <button type="button" data-closes onClick={start}>
          A new feed, by a few questions …
        </button>
        <button type="button" data-closes onClick={chooseFile}>
          A file …
        </button>
        <p class="quiet">
          a design, an edited workbook, the shop’s own file or its logo; or drop them on the page
        </p>
        {shop === null ? null : (
          <button type="button" data-closes onClick={() => bench.takeShop(null)}>
            Put the shop’s file {shop.file} away
          </button>
        )}
        {demos.map((demo) => (
          <button
            type="button"
            data-closes
            key={demo.file}
            onClick={() => {
              bench.load(demo);
              say(`Started from the demo ${demo.file}.`);
            }}
          >
            Demo: {demo.file.replace(/\.yaml$/, '').replaceAll('-', ' ')}
          </button>
        ))}
      </Menu>
      <input
        id={CHOOSER}
        type="file"
        hidden
        accept=".yaml,.yml,.json,.xlsx,.png,.jpg,.jpeg,.svg"
        multiple
        onChange={(event) => {
          take(bench, [...(event.currentTarget.files ?? [])], say);
          // The same file can be opened again.
          event.currentTarget.value = '';
        }}
      />
      <Menu name="Save">
        <button type="button" data-closes onClick={saveText}>
          Save YAML
        </button>
        {came === null ? null : (
          <button type="button" data-closes onClick={() => save(came.text, came.file)}>
            The shop’s file, {came.file}
          </button>
        )}
        <button
          type="button"
          data-closes
          disabled={!sound || stop !== null || guessed}
          onClick={() => make('workbook', { text, file, shop: shopOf(bench.state) }, named(file, '.xlsx'))}
        >
          Workbook
        </button>
        <button type="button" data-closes disabled={!sound || busy || open || guessed} onClick={saveResult}>
          Result
        </button>
      </Menu>
      <button
        type="button"
        disabled={history.past.length === 0}
        onClick={() => bench.undo()}
        title="Undo (Ctrl+Z)"
      >
        Undo
      </button>
      <button
        type="button"
        class="wide"
        disabled={history.future.length === 0}
        onClick={() => bench.redo()}
        title="Redo (Ctrl+Y)"
      >
        Redo
      </button>
      <div class="wide">
        <Menu name="Print">
          <Printing say={say} />
        </Menu>
      </div>
      <Menu name="More">
        <button
          type="button"
          class="slim"
          disabled={history.future.length === 0}
          onClick={() => bench.redo()}
        >
          Redo
        </button>
        <div class="slim">
          <Printing say={say} />
        </div>
        <Settings />
      </Menu>
      <Making what={WORKBOOK} said={said} stop={stop} />
    </div>
  );
}

/** One page, or with everything behind it. */
function Printing({ say }: Pick<ToolbarProps, 'say'>) {
  const bench = useBench();
  const go = async (appendix: boolean): Promise<void> => {
    const { dataset } = document.documentElement;
    if (appendix) dataset.appendix = '';
    else delete dataset.appendix;
    say('Being drawn for paper …');
    await bench.whole();
    say('');
    print();
  };
  return (
    <>
      <button type="button" data-closes onClick={() => go(false)}>
        Print one page
      </button>
      <button type="button" data-closes onClick={() => go(true)}>
        Print it with an appendix
      </button>
    </>
  );
}
