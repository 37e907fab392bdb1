/**
 * What keeps a person's designs: this browser for the next visit, and a link for another one. Nothing leaves the
 * machine.
 */
import { stringify } from 'yaml';
import { treeOf } from './designFile.js';
import { isKept, type Kept, type Workbench } from './workbench.js';

/** Pages whose designs this browser keeps; the longest unused goes first. */
const MOST_PAGES = 20;
const PREFIX = 'pitwright ';
const FRAGMENT = '#design=';
/** No designs are larger than this; what a link unpacks to beyond it is no design [bytes]. */
const LARGEST = 1_000_000;

interface Stored {
  at: number;
  kept: Kept;
}

/**
 * Keeps designs in the browser: in the window's own store, so that a reload finds what this window had, and in that of
 * all windows for the next visit.
 */
export class Keeper {
  private readonly key: string;

  /** @param given what the page came with: another file under the same name is another page */
  constructor(place: string, given: string) {
    this.key = `${PREFIX}${hashOf(`${place}\n${given}`)}`;
  }

  /** @returns whether the browser allows it */
  keep(kept: Kept): boolean {
    const text = JSON.stringify({ at: Date.now(), kept } satisfies Stored);
    let allowed = false;
    for (const store of [() => window.localStorage, () => window.sessionStorage]) {
      try {
        store().setItem(this.key, text);
        allowed = true;
      } catch {
        // not allowed, or full: the other may do
      }
    }
    if (allowed) this.tidy();
    return allowed;
  }

  /** What was kept; null: nothing. */
  find(): Kept | null {
    for (const store of [() => window.sessionStorage, () => window.localStorage]) {
      try {
        const found = stored(store().getItem(this.key));
        if (found) return found.kept;
      } catch {
        // not allowed
      }
    }
    return null;
  }

  private tidy(): void {
    try {
      const own = Object.keys(localStorage).filter((key) => key.startsWith(PREFIX));
      const oldest = own
        .map((key) => ({ key, at: stored(localStorage.getItem(key))?.at ?? 0 }))
        .sort((a, b) => b.at - a.at);
      for (const { key } of oldest.slice(MOST_PAGES)) localStorage.removeItem(key);
    } catch {
      // not allowed
    }
  }
}

function stored(text: string | null): Stored | null {
  if (text === null) return null;
  try {
    const value = JSON.parse(text) as Stored;
    return isKept(value.kept) ? value : null;
  } catch {
    return null;
  }
}

/** FNV-1a: a short name for a text, not a secret. */
function hashOf(text: string): string {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  return (hash >>> 0).toString(36);
}

/** The end of an address that carries designs, packed; comments stay behind. */
export async function linkOf(bench: Workbench): Promise<string> {
  const { options, current } = bench.keep();
  const bare = bench.options.map(({ text }, i) => ({
    ...options[i],
    text: stringify(treeOf(text), { collectionStyle: 'flow', lineWidth: 0 }),
  }));
  const packed = await through(
    new CompressionStream('deflate-raw'),
    new Blob([JSON.stringify({ options: bare, current })]),
  );
  const bytes = String.fromCharCode(...packed);
  return FRAGMENT + btoa(bytes).replaceAll('+', '-').replaceAll('/', '_').replace(/=+$/, '');
}

/** Does an address carry designs? */
export function carriesDesigns(fragment: string): boolean {
  return fragment.startsWith(FRAGMENT);
}

/** The designs that an address carries; null: it is cut short, or no link of this page. */
export async function designsIn(fragment: string): Promise<Kept | null> {
  try {
    const text = atob(fragment.slice(FRAGMENT.length).replaceAll('-', '+').replaceAll('_', '/'));
    const packed = Uint8Array.from(text, (character) => character.charCodeAt(0));
    const bytes = await through(new DecompressionStream('deflate-raw'), new Blob([packed]));
    const value: unknown = JSON.parse(new TextDecoder().decode(bytes));
    return isKept(value) ? value : null;
  } catch {
    return null;
  }
}

async function through(stream: CompressionStream | DecompressionStream, blob: Blob): Promise<Uint8Array> {
  const reader = blob.stream().pipeThrough(stream).getReader();
  const parts: Uint8Array[] = [];
  let size = 0;
  for (;;) {
    const { done, value } = await reader.read();
    if (done) break;
    const part = value as Uint8Array;
    size += part.length;
    if (size > LARGEST) throw new Error('too large');
    parts.push(part);
  }
  return new Uint8Array(await new Blob(parts as BlobPart[]).arrayBuffer());
}
