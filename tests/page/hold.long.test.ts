import { describe, it } from 'vitest';
import { expectGrown } from './support/gripped.js';

describe('handles of the drawing', () => {
  it.each(['tank-on-trailer', 'insulated-upright', 'reverse-flow'])(
    'of %s: what one is dragged by is what its field grows by on the drawing',
    expectGrown,
  );
});
