import { describe, it } from 'vitest';
import { expectOneLimit } from './refined.js';

describe('more cells along the chamber', () => {
  // gas of a reverse-flow pit had run against a resistance a cell: a third less air with nine times the cells
  it.each(['reverse-flow.yaml'])('%s comes to one limit, in heat and in air', expectOneLimit);
});
