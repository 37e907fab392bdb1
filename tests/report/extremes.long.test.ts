import { describe, it } from 'vitest';
import { expectNumbers, EXTREMES } from './extremes.js';

describe('all that is printed', () => {
  it.each(EXTREMES.slice(1))('%s', expectNumbers);
});
