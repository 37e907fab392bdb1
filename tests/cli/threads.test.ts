import { describe, it } from 'vitest';
import { expectBrokenOff } from './endedThreads.js';

describe('a thread that ends early', () => {
  it.each([
    ['leaves with 7', 'process.exit(7)', /our fault, not yours: a thread ended before its work was done \(exit 7\)\./],
  ])('in a batch, that %s: exit 1, whole lines, a word on how many', (_, what, message) =>
    expectBrokenOff(what, message),
  );
});
