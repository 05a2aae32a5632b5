/** What a person must be told before anything else. */
import { useEffect, useRef, useState } from 'preact/hooks';
import { useBench, useBenchState } from '../state/use.ts';
import { chooseFile } from './files.ts';

export function Banners({ start }: { readonly start: () => void }) {
  const bench = useBench();
  const { failed, offered, elsewhere, fresh, unkept } = useBenchState(
    'failed',
    'offered',
    'elsewhere',
    'fresh',
    'unkept',
  );
  /** Once is enough. */
  const [known, know] = useState(false);
  // The button that was pressed is gone with its banner.
  const before = useRef(0);
  const shown = [fresh, offered !== null, unkept && !known, elsewhere].filter(Boolean).length;
  useEffect(() => {
    if (shown < before.current && document.activeElement === document.body)
      document.getElementById('answer')?.focus();
    before.current = shown;
  }, [shown]);
  return (
    <>
      {fresh ? (
        <p class="banner fresh">
          <span>What stands here is a demo.</span>
          <span class="buttons">
            <button type="button" class="main" onClick={start}>
              New feed
            </button>
            <button type="button" onClick={chooseFile}>
              Open a file
            </button>
            <button type="button" onClick={() => bench.keepDemo()}>
              Look at it
            </button>
          </span>
        </p>
      ) : null}
      {failed === null ? null : (
        <p class="banner" role="alert">
          The tool failed on this design. The fault is in the tool, not in the design: {failed}
        </p>
      )}
      {offered === null ? null : (
        <p class="banner" role="alert">
          This page did not finish loading last time, so it has opened its own design.{' '}
          <button type="button" onClick={() => bench.takeOffered()}>
            Open the stored design anyway
          </button>{' '}
          <button type="button" onClick={() => bench.refuseOffered()}>
            Forget it
          </button>
        </p>
      )}
      {unkept && !known ? (
        <p class="banner" role="status">
          This browser does not keep the design: it is gone when the page is closed, unless it is saved as a
          file.{' '}
          <button type="button" onClick={() => know(true)}>
            I will save it
          </button>
        </p>
      ) : null}
      {elsewhere ? (
        <p class="banner" role="alert">
          This page is open in another tab too, and that one has stored its design. Changes made here are not
          stored.{' '}
          <button type="button" onClick={() => location.reload()}>
            Take the other one
          </button>{' '}
          <button type="button" onClick={() => bench.goOn()}>
            Keep this one, and store it
          </button>
        </p>
      ) : null}
    </>
  );
}
