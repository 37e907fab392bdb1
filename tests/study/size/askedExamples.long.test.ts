import { describe, it } from 'vitest';
import { expectExampleSound } from './askedExamples.js';

describe('sizes of the examples', () => {
  it.each(['plain-24', 'boxed-22', 'four-ways', 'wind-cold'])(
    '%s: sound, and clean when they are estimated',
    { timeout: 600_000 },
    expectExampleSound,
  );
});
