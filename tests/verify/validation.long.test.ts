import { describe, expect, test } from 'vitest';
import { BASE } from '../../src/verify/validation/assumptions.js';
import { CORRIDOR_COLUMNS, LAYERED, runCorridor } from '../../src/verify/validation/corridor.js';
import { readMeasured } from '../../src/verify/validation/measured.js';
import { reference } from './referenceFiles.js';

const { corridor } = reference();

describe('the corridor behind a burn room', () => {
  test('cut three times as finely, what is compared moves by less than 6 %', () => {
    const { rows } = readMeasured(corridor.text, corridor.file, CORRIDOR_COLUMNS);
    const fine = runCorridor(rows, BASE, { cells: 3 * LAYERED.cells, levels: 2 * LAYERED.levels });
    // the upper rise by 4.1 to 5.0 %, the height by 2.4 to 3.5
    runCorridor(rows, BASE, LAYERED).forEach(({ farEnd }, n) => {
      expect(Math.abs(farEnd.height / fine[n].farEnd.height - 1)).toBeLessThan(0.04);
      expect(Math.abs(farEnd.upper / fine[n].farEnd.upper - 1)).toBeLessThan(0.06);
    });
  });
});
