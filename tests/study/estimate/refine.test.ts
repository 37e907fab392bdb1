import { describe, it } from 'vitest';
import { expectOneLimit } from './refined.js';

describe('more cells along the chamber', () => {
  it.each(['plain-24.yaml'])('%s comes to one limit, in heat and in air', expectOneLimit);
});
