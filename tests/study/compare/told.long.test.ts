import { describe, it } from 'vitest';
import { expectToldAsPrinted, KINDS } from './toldDraws.js';

describe('numbers beside each other', () => {
  it.each(KINDS)('%s: a printed difference is that of the printed numbers, and of the full ones to a digit', (kind) =>
    expectToldAsPrinted(kind, 3000),
  );
});
