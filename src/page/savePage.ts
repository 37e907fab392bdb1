/**
 * This page as a file of its own with the designs of the moment in it: what came with it, before its script touched
 * anything.
 */
import { designJson } from './slot.js';
import type { Kept } from './workbench.js';

/** A copy of the document as it came; to be taken before the page is filled. */
export function pristine(): HTMLElement {
  const root = document.documentElement.cloneNode(true) as HTMLElement;
  // what the boot lines have added
  for (const name of [...root.attributes].map((each) => each.name))
    if (name.startsWith('data-')) root.removeAttribute(name);
  for (const script of root.querySelectorAll('script[src]')) script.remove();
  return root;
}

/** The text of the file. */
export function pageWith(root: HTMLElement, kept: Kept): string {
  const own = root.cloneNode(true) as HTMLElement;
  own.querySelector('#design')!.textContent = designJson(kept);
  return `<!doctype html>\n${own.outerHTML}\n`;
}
