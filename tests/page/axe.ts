/** What axe finds in the page; where it leaves contrast open it is computed. */
import axe from 'axe-core';
import type { Page } from 'playwright-core';

/**
 * Letters that axe left open stand on a picture, on hatching or below another element: their colour is held against every
 * ground that there can be, 4.5 at least (WCAG 2.2, 1.4.3): what is behind them up to the first opaque one, with the colours
 * of its hatching; in a drawing the fills that a letter of the page can lie on.
 */
const FAULTS = `(async () => {
  const part = (one) => { const v = one / 255; return v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4; };
  const light = ([r, g, b]) => 0.2126 * part(r) + 0.7152 * part(g) + 0.0722 * part(b);
  const ratio = (a, b) => { const [low, high] = [light(a), light(b)].sort((x, y) => x - y); return (high + 0.05) / (low + 0.05); };
  const colour = (text) => { const [r, g, b, a = 1] = (text.match(/[\\d.]+/g) ?? [0, 0, 0, 0]).map(Number); return [r, g, b, a]; };
  const named = (near, name) => {
    const probe = document.createElement('i');
    probe.style.color = 'var(--' + name + ')';
    near.append(probe);
    const found = colour(getComputedStyle(probe).color);
    probe.remove();
    return found;
  };
  const up = (one) => one.parentElement ?? one.getRootNode().host ?? null;
  const groundsOf = (one) => {
    const found = one.closest('svg') === null ? [] : ['sheet', 'tint'].map((name) => named(up(one.closest('svg')), name));
    for (let at = one; at !== null; at = up(at)) {
      const { backgroundColor, backgroundImage } = getComputedStyle(at);
      found.push(...(backgroundImage.match(/rgba?\\([^)]*\\)/g) ?? []).map(colour).filter(([, , , a]) => a > 0));
      const ground = colour(backgroundColor);
      if (ground[3] === 1) return [...found, ground];
    }
    return [...found, [255, 255, 255, 1]];
  };
  // What is drawn anew meanwhile is looked at again.
  let run, open, again = 0;
  do {
    run = await axe.run({ elementRef: true });
    open = run.incomplete.filter(({ id }) => id === 'color-contrast').flatMap(({ nodes }) => nodes);
    again += 1;
  } while (open.some(({ element }) => !element.isConnected) && again < 20);
  const { violations, passes } = run;
  const told = violations.flatMap(({ id, nodes }) => nodes.map(({ html }) => id + ': ' + html.slice(0, 200)));
  for (const { element: one, html } of open) {
    if (!one.isConnected) { told.push('drawn anew without end: ' + html.slice(0, 200)); continue; }
    const { color, fill } = getComputedStyle(one);
    const ink = colour(one.matches('svg *') ? fill : color);
    const poor = groundsOf(one).map((ground) => ratio(ink, ground)).filter((value) => value < 4.5);
    if (poor.length > 0) told.push('contrast ' + poor.map((value) => value.toFixed(2)) + ': ' + html.slice(0, 200));
  }
  return { told, seen: passes.length, computed: open.length };
})()`;

/** Every violation, and every text of too little contrast; a run that saw nothing is one, too. */
export async function faults(page: Page): Promise<readonly string[]> {
  if (!(await page.evaluate(`'axe' in window`))) await page.evaluate(axe.source);
  const { told, seen } = (await page.evaluate(FAULTS)) as { told: string[]; seen: number };
  return seen > 0 ? told : ['axe has looked at nothing'];
}

/** The same in both schemes. */
export async function faultsInBoth(page: Page): Promise<readonly string[]> {
  const found: string[] = [];
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme });
    found.push(...(await faults(page)).map((one) => `${colorScheme}: ${one}`));
  }
  return found;
}
