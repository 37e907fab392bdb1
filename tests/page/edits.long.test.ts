import { describe, it } from 'vitest';
import { expectPlacesReadBack, expectShownAsIs } from './support/controls.js';

const examples = ['insulated-upright', 'reverse-flow', 'boxed-22', 'wind-cold', 'tank-on-trailer'];

describe('controls', () => {
  it.each(examples)(
    'every place of every slider of %s writes a text that reads back to that place',
    expectPlacesReadBack,
  );

  it.each(examples)('shows %s as it is: setting each field to its own text changes nothing', expectShownAsIs);
});
