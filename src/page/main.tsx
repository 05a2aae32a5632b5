/** Starts the page: with what is stored, with the design that was put into it, or with the first demo. */
import { render } from 'preact';
import { App } from './App.tsx';
import { Origins } from './answer/Origins.tsx';
import { followPrinting } from './pictures/width.ts';
import type { Form, Given } from './protocol.ts';
import { named, save } from './shell/files.ts';
import { Guard } from './shell/Guard.tsx';
import { Bench } from './state/bench.ts';
import { type Box, Storage } from './state/storage.ts';
import { BenchContext } from './state/use.ts';

/** Data in the page, by the element's id; the elements stand in index.html. */
const inPage = (id: string): unknown => JSON.parse(document.getElementById(id)?.textContent ?? 'null');

/** The browser's storage; asking for it can be refused already. */
function localBox(): Box | null {
  try {
    return window.localStorage;
  } catch {
    return null;
  }
}

const demos = inPage('demos') as Given[];
const own = inPage('start') as Given | null;
const start = own ?? (demos[0] as Given);
// A page that was written anew, with other prices beside the same design, is another one.
const storage = new Storage(own === null ? '' : `${own.text}${own.shop?.text ?? ''}`, localBox());

const rescue = (): void => {
  const { text, file } = bench.state.history.now;
  save(text, named(file, '.yaml'));
};
const afresh = (): void => {
  storage.clear();
  location.reload();
};

const bench = new Bench({ ...start, demo: own === null }, storage, () => inPage('form') as Form);
followPrinting(() => bench.printed());
addEventListener('pagehide', () => bench.flush());
addEventListener('storage', (event) => storage.concerns(event) && bench.overtaken());
render(
  <BenchContext.Provider value={bench}>
    <Guard rescue={rescue} afresh={afresh}>
      <Origins>
        <App demos={demos} />
      </Origins>
    </Guard>
  </BenchContext.Provider>,
  document.getElementById('app') as HTMLElement,
);
