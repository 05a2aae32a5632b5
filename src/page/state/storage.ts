/**
 * What survives a reload. Each page has a place of its own by the design that it was written with. Whatever stands
 * there, the page opens: what cannot be read is left out, and a text with which the last start did not come to an
 * end is not started with again, but offered.
 */

import { UNITS, type Units } from '../../basis/shown.ts';
import type { ShopText } from '../../design/shop/beside.ts';
import type { Given } from '../protocol.ts';

export type Wish = Units | 'design';

export interface Stored {
  readonly text: string;
  readonly file: string;
  /** The shop's file that came with the design. */
  readonly came: ShopText | null;
  /** Units that are wished for, or those of the design. */
  readonly system: Wish;
  readonly look: 'auto' | 'light' | 'dark';
  /** The design of the answer that is kept beside the live one; null for none. */
  readonly snapshot: Given | null;
  /** The shop's file that was opened beside the design. */
  readonly shop: ShopText | null;
}

/** What is used of the browser's storage. */
export interface Box {
  getItem(key: string): string | null;
  setItem(key: string, value: string): void;
  removeItem(key: string): void;
}

/** As a logo is kept: it stands on papers as it is, and so must be nothing but a picture. */
const LOGO = /^data:image\/[a-z+]{3,10};base64,[A-Za-z0-9+/]*={0,2}$/;

const FORMAT = 'coilfeed-page/1';
/** A design may have a mebibyte; what is longer was not stored by this page. */
const LONGEST = 1024 * 1024;
/** All that is stored: design, snapshot, and the shop's file of each. */
const MOST = 4 * LONGEST;

/** FNV-1a, 32 bits: enough to tell a few files apart. */
function digest(text: string): string {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  return (hash >>> 0).toString(16).padStart(8, '0');
}

export interface Found {
  readonly stored: Stored | null;
  /** A text that the page did not come up with the last time. */
  readonly offered: Stored | null;
}

export class Storage {
  private readonly key: string;
  private readonly mark: string;
  /** By itself, since it is large and seldom another. */
  private readonly logoKey: string;
  private readonly box: Box | null;

  constructor(start: string, box: Box | null) {
    this.key = `${FORMAT}:${digest(start)}`;
    this.mark = `${this.key}:starting`;
    this.logoKey = `${this.key}:logo`;
    this.box = box;
  }

  /** What was stored. Marks the beginning of a start; `started` takes the mark away. */
  open(): Found {
    const stored = this.read();
    if (stored === null) return { stored: null, offered: null };
    const unfinished = this.attempt((box) => box.getItem(this.mark) !== null) ?? false;
    this.attempt((box) => box.setItem(this.mark, '1'));
    return unfinished ? { stored: null, offered: stored } : { stored, offered: null };
  }

  /** Whether another tab stored here. */
  concerns({ key, newValue }: { readonly key: string | null; readonly newValue: string | null }): boolean {
    return key === this.key && newValue !== null;
  }

  started(): void {
    this.attempt((box) => box.removeItem(this.mark));
  }

  /** False where the browser refuses it, or has no room; and of what is too long to be read again. */
  save(stored: Stored): boolean {
    const raw = JSON.stringify(stored);
    if (stored.text.length > LONGEST || raw.length > MOST) return false;
    const done = this.attempt((box) => {
      box.setItem(this.key, raw);
      return true;
    });
    return done === true;
  }

  /** The shop's logo as a data URL. */
  logo(): string | null {
    const logo = this.attempt((box) => box.getItem(this.logoKey));
    return logo !== null && logo.length < 2 * LONGEST && LOGO.test(logo) ? logo : null;
  }

  keepLogo(logo: string | null): void {
    this.attempt((box) => (logo === null ? box.removeItem(this.logoKey) : box.setItem(this.logoKey, logo)));
  }

  clear(): void {
    this.attempt((box) => {
      box.removeItem(this.logoKey);
      box.removeItem(this.key);
      box.removeItem(this.mark);
    });
  }

  private read(): Stored | null {
    const raw = this.attempt((box) => box.getItem(this.key));
    if (raw == null || raw.length > MOST) return null;
    try {
      const found = JSON.parse(raw) as Partial<Record<keyof Stored, unknown>>;
      const kept = keptOf(found);
      if (kept === null) return null;
      const { came, system, look, snapshot, shop } = found;
      const shown = keptOf(snapshot);
      return {
        ...kept,
        came: shopOf(came),
        system: UNITS.find((units) => units === system) ?? 'design',
        look: look === 'light' || look === 'dark' ? look : 'auto',
        snapshot: shown && { ...shown, shop: shopOf((snapshot as { shop?: unknown }).shop) },
        shop: shopOf(shop),
      };
    } catch {
      return null;
    }
  }

  /** A browser may refuse storage, or have none left. */
  private attempt<T>(act: (box: Box) => T): T | null {
    try {
      return this.box === null ? null : act(this.box);
    } catch {
      return null;
    }
  }
}

function keptOf(given: unknown): Pick<Given, 'text' | 'file'> | null {
  const { text, file } = (given ?? {}) as Partial<Record<keyof Given, unknown>>;
  if (typeof text !== 'string' || text.length > LONGEST) return null;
  return { text, file: typeof file === 'string' ? file : 'design.yaml' };
}

function shopOf(given: unknown): ShopText | null {
  const kept = keptOf(given);
  if (kept === null) return null;
  const { as } = given as { as?: unknown };
  return typeof as === 'string' ? { ...kept, as } : kept;
}
