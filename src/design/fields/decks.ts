/**
 * What lies over the gas's way under the food: a reverse-flow plate, a row of plates with gaps between them, or a
 * deflector.
 */
import { pathText } from '../path.js';
import { range } from '../ranges.js';
import type { Fields } from '../reading.js';
import { block, optional, readRows } from './blocks.js';
import { quantities, quantity } from './field.js';
import { OPENING, plate } from './shared.js';

/** Where a plate lies in the chamber, and how thick it is. */
function levelOf(what: string) {
  return {
    height: quantity(range('length', '1/2 in', '5 ft'), `Height of ${what} above the chamber’s inside floor line.`),
    plate: plate('Plate thickness.', {
      default: (_, around) => around.plate as number,
      says: 'the chamber’s plate',
    }),
  };
}

const PLATES = {
  ...levelOf('the plates'),
  gaps: quantities(
    range('length', '1/8 in', '3 ft'),
    'Gaps along from the throat, each behind a plate; the plates are alike.',
    12,
  ),
};

export const plates = optional(
  block(
    'A row of plates under the grate: gas runs under them and rises through the gaps between them.',
    PLATES,
    (fields, around) => {
      warnStirred(
        fields,
        'gas under the plates counts as one body, stirred from end to end by the stream from the throat, and rises through the gaps by their areas (estimate): what a plate turns aside, and what a gap near the throat takes from the far ones, is left out',
      );
      return readRows(PLATES, fields, around);
    },
  ),
);

const DEFLECTOR = {
  ...levelOf('the plate'),
  length: quantity(range('length', '2 in', '10 ft'), 'How far it reaches along from the throat’s end.'),
};

export const deflector = optional(
  block(
    'A plate over the throat: gas runs under it along the chamber, and rises past its edge.',
    DEFLECTOR,
    (fields, around) => {
      warnStirred(
        fields,
        'gas lower than the deflector counts as one body, stirred from end to end by the stream from the throat, and rises past its edge all along (estimate): how far the stream is thrown, and what it heats where it strikes, is left out',
      );
      return readRows(DEFLECTOR, fields, around);
    },
  ),
);

function warnStirred({ reading, path }: Fields, message: string): void {
  reading.warnings.push({ code: 'plates-stirred', message, where: pathText(path), value: null, limits: null });
}

export const reverse = optional(
  block('Reverse flow: gas runs under a plate to the far end, turns, and comes back to a stack by the fire.', {
    ...levelOf('the plate'),
    turn: quantity(OPENING, 'Free area where the gas turns at the far end.'),
  }),
);
