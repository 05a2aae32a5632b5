/** The wiring diagram of the kit. */
import { useEffect, useState } from 'preact/hooks';
import { named, save } from '../shell/files.ts';
import { useBenchState, useCurrent, useReply } from '../state/use.ts';
import { Dated } from './Dated.tsx';

export function Wiring() {
  const { view, history } = useBenchState('view', 'history');
  const { reply: svg, late } = useReply('diagram', null, 'diagram');
  // As the papers that it is one of.
  const current = useCurrent() && view?.design.unknowns.length === 0;
  const [url, set] = useState<string | null>(null);
  useEffect(() => {
    if (typeof svg !== 'string') return;
    const made = URL.createObjectURL(new Blob([svg], { type: 'image/svg+xml' }));
    set(made);
    return () => URL.revokeObjectURL(made);
  }, [svg]);
  if (svg !== null && typeof svg !== 'string') return <p class="problem">{svg.why}</p>;
  if (svg === null || url === null) return <p class="quiet">Being drawn …</p>;
  return (
    <Dated late={late}>
      <p class="buttons">
        <button
          type="button"
          disabled={late || !current}
          onClick={() => save(svg, named(history.now.file, '-wiring.svg'))}
        >
          Save as SVG
        </button>
      </p>
      <img class="wiring" src={url} alt={`Wiring diagram of ${view?.json.title ?? 'the feed'}`} />
    </Dated>
  );
}
