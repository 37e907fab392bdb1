import { describe, it } from 'vitest';
import { expectGrown } from './support/gripped.js';

describe('handles of the drawing', () => {
  it.each(['plain-24', 'offset-with-upright'])(
    'of %s: what one is dragged by is what its field grows by on the drawing',
    expectGrown,
  );
});
