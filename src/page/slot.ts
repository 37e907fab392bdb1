/** Where a page keeps the designs that it starts with. */
import { visible } from '../words/plainText.js';

/** The element of an empty page; a saved one has designs in it. */
export const DESIGN_SLOT = '<script type="application/json" id="design">null</script>';

/** What stands there, as JSON: inside a script element only '<' could end it. */
export function designJson(designs: unknown): string {
  return visible(JSON.stringify(designs)).replace(/</g, '\\u003c');
}
