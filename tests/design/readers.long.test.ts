/**
 * Quantities in every form a builder, or a slip of his hand, may give them: read right, or refused with field, range
 * and form.
 */
import { describe, expect, it } from 'vitest';
import { PLACES, readAnyQuantity, stand } from './quantityPlaces.js';

describe('any number with any unit in any field', () => {
  it('is read into a sound design, or refused at its line with what is allowed', () => readAnyQuantity(1000));

  it('is refused when blank, null or no text at all', () => {
    for (const place of PLACES) {
      for (const value of ['', ' ', null, true, [], {}, ['1 in']]) expect(stand(place, value)).toHaveLength(1);
    }
  });
});
