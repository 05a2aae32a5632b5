/** What a person must be told before anything else. */
import { useBench, useBenchState } from '../state/use.ts';

export function Banners() {
  const bench = useBench();
  const { failed, offered, elsewhere } = useBenchState('failed', 'offered', 'elsewhere');
  return (
    <>
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
          <button type="button" onClick={() => bench.clear()}>
            Forget it
          </button>
        </p>
      )}
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
