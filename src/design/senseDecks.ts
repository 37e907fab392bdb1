/** Can plates under the grate lie where the file says. */
import { length } from './faults.js';
import { format } from '../units/index.js';
import type { Chamber, Design } from './design.js';
import { deckOf, deckWidth } from './decks.js';
import { gatherOf } from './gather.js';
import type { Reading } from './reading.js';
import type { Path } from './path.js';
import { insideOf } from './walls.js';
import { isHollow } from './senseParts.js';

const DECKS = ['reverse', 'plates', 'deflector'] as const;

/** Largest share of the chamber's length that a deflector may reach over: common practice, no source. */
const MOST_COVERED = 0.7;
/** Largest share of a row of plates that its gaps may take together: common practice, no source. */
const MOST_OPEN = 0.7;

/**
 * A reverse-flow plate or a row of plates lies inside the chamber, the fire comes in under it and the stack draws from
 * over it.
 */
export function checkDeck(design: Design, reading: Reading): void {
  const { chamber, throat, stacks } = design;
  const deck = chamber && deckOf(chamber);
  const given = DECKS.filter((each) => chamber?.[each] !== undefined);
  if (!deck || !isHollow(chamber) || given.some((each) => reading.hasFault(['chamber', each]))) return;
  const path: Path = ['chamber', given[0]];
  if (given.length > 1) {
    reading.fault(['chamber', given[1]], {
      message: `lies where the ${deck.name} lies`,
      allowed: `one of ${DECKS.join(', ')}`,
      value: null,
    });
    return;
  }
  const { height: room, floor, length: inner } = insideOf(chamber);
  if (deck.height + deck.plate >= room) {
    reading.fault([...path, 'height'], {
      message: `puts the ${deck.name} outside the chamber`,
      allowed: `less than ${length(room - deck.plate)}`,
    });
    return;
  }
  const level = floor + deck.height;
  if (chamber.reverse) {
    const area = deckWidth(chamber) * inner;
    if (chamber.reverse.turn > 0.5 * area) {
      reading.fault([...path, 'turn'], {
        message: 'takes more than half of the plate away',
        allowed: `up to ${format('area', 0.5 * area)}`,
      });
    }
  } else if (chamber.plates) checkGaps(chamber, path, reading);
  else if (chamber.deflector!.length > MOST_COVERED * inner) {
    reading.fault([...path, 'length'], {
      message: `reaches over ${length(chamber.deflector!.length)} of ${length(inner)}: that is a row of plates or reverse flow`,
      allowed: `up to ${length(MOST_COVERED * inner)}, or plates, or reverse`,
    });
  }
  if (throat.centre > level) {
    reading.fault(['throat', 'centre'], {
      message: `lets the fire in above the ${deck.name}`,
      allowed: `less than ${length(level)}`,
    });
  }
  stacks.forEach((stack, i) => {
    const draws = gatherOf(design, stack)?.mouthCentre ?? stack.base;
    if (stack.part === 'chamber' && draws <= level) {
      reading.fault(['stacks', i, 'base'], {
        message: `draws from under the ${deck.name}`,
        allowed: `more than ${length(level)}`,
      });
    }
  });
}

function checkGaps(chamber: Chamber, path: Path, reading: Reading): void {
  const { gaps } = chamber.plates!;
  const example = '[4 in, 2 in, 2 in, 6 in]';
  if (gaps.length === 0) {
    if (reading.hasFault([...path, 'gaps'])) return;
    reading.fault([...path, 'gaps'], {
      code: 'missing',
      message: 'are missing: gas must get up through the plates',
      allowed: 'a list of lengths, along from the throat',
      example,
      value: null,
    });
    return;
  }
  const long = insideOf(chamber).length;
  const open = gaps.reduce((sum, gap) => sum + gap, 0);
  if (open > MOST_OPEN * long) {
    reading.fault([...path, 'gaps'], {
      message: `come to ${length(open)} of ${length(long)}: nothing to speak of is left of the plates`,
      allowed: `up to ${length(MOST_OPEN * long)} in all`,
      value: null,
    });
  }
}
