/** The wiring diagram of the kit, drawn when it is asked for: its layout takes a second or two. */
import { useEffect, useState } from 'preact/hooks';
import { save } from '../shell/files.ts';
import { askOnce } from '../state/client.ts';
import { useBenchState } from '../state/use.ts';

interface Drawn {
  readonly text: string;
  readonly svg: string;
  readonly url: string;
}

export function Wiring() {
  const { history, view, problems, file } = useBenchState();
  const [drawn, set] = useState<Drawn | null>(null);
  const [state, setState] = useState<'idle' | 'drawing' | { failed: string }>('idle');
  useEffect(() => (drawn ? () => URL.revokeObjectURL(drawn.url) : undefined), [drawn]);
  const draw = async (): Promise<void> => {
    setState('drawing');
    try {
      const { text } = history;
      const svg = await askOnce('diagram', { text }, 'layout');
      set({ text, svg, url: URL.createObjectURL(new Blob([svg], { type: 'image/svg+xml' })) });
      setState('idle');
    } catch (error) {
      setState({ failed: error instanceof Error ? error.message : String(error) });
    }
  };
  const old = drawn !== null && drawn.text !== history.text;
  return (
    <>
      <p class="buttons">
        <button type="button" disabled={state === 'drawing' || problems.length > 0} onClick={draw}>
          {state === 'drawing' ? 'Drawing …' : drawn === null ? 'Draw the wiring diagram' : 'Draw it again'}
        </button>
        {drawn === null ? null : (
          <button
            type="button"
            onClick={() => save(drawn.svg, `${file.replace(/\.\w+$/, '')}-wiring.svg`, 'image/svg+xml')}
          >
            Save as SVG
          </button>
        )}
      </p>
      <p role="status">
        {typeof state === 'object'
          ? `It could not be drawn: ${state.failed}`
          : old
            ? 'The design has changed since this was drawn.'
            : ''}
      </p>
      {drawn === null ? null : (
        <img
          class={`wiring ${old ? 'old' : ''}`}
          src={drawn.url}
          alt={`Wiring diagram of ${view?.json.title ?? 'the feed'}`}
        />
      )}
    </>
  );
}
