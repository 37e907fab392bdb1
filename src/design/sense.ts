/** Physical sense. */
import type { Design } from './design.js';
import type { Reading } from './reading.js';

export function checkSense(_design: Design, _reading: Reading): void {}
