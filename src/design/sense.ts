/**
 * Physical sense: what has a right unit and a fair size, and still can't be built.
 *
 * Numbers that failed to read are NaN here; every test is written so that a NaN passes it, and each fault is told once.
 */
import { hasGaps } from './decks.js';
import { format } from '../units/index.js';
import type { Design, PartName, StationName } from './design.js';
import type { Reading } from './reading.js';
import { checkCarry } from './senseCarry.js';
import { checkCook } from './senseCook.js';
import { checkLog } from './senseLog.js';
import { checkContents, checkPart } from './senseParts.js';
import { checkDeck } from './senseDecks.js';
import { checkStacks } from './senseStacks.js';
import { checkIntakes, checkJoints } from './senseOpenings.js';
import { checkGauge, checkPlaces } from './sensePlaces.js';
import { checkSize } from './senseSize.js';
import { PARTS } from './stations.js';

/** Least lead of the target over outdoor air [K]; below it there is no fire to speak of. */
const LEAST_LEAD = 5;

/** Tells the reading whatever of a design can not be built. */
export function checkSense(design: Design, reading: Reading): void {
  const parts = presentParts(design);
  checkLayout(design, reading);
  for (const name of parts) checkPart(design, name, reading);
  checkDeck(design, reading);
  checkIntakes(design, reading);
  checkJoints(design, reading);
  checkStacks(design, reading);
  for (const name of parts) checkContents(design, name, stationsOf(design, name), reading);
  checkPlaces(design, reading);
  checkTarget(design, reading);
  checkTerrain(design, reading);
  checkCook(design, allStations(design), reading);
  checkCarry(design, (name) => stationsOf(design, name), reading);
  checkLog(design, allStations(design), reading);
  checkSize(design, reading);
}

function presentParts(design: Design): PartName[] {
  return PARTS.filter((name) => design[name] !== undefined);
}

/** Stations that a pit has, in the order of its parts. */
export function allStations(design: Design): StationName[] {
  return presentParts(design).flatMap((name) => stationsOf(design, name));
}

/** Stations that a part has. */
export function stationsOf(design: Design, part: PartName): StationName[] {
  if (part === 'firebox') return ['firebox'];
  if (part === 'upright') return ['uprightLower', 'uprightUpper'];
  const above: StationName[] = ['fireEnd', 'middle', 'stackEnd'];
  if (hasGaps(design.chamber)) return [...above, 'plenumMiddle'];
  return design.chamber?.reverse ? [...above, 'plenumFireEnd', 'plenumMiddle', 'plenumStackEnd'] : above;
}

function checkLayout(design: Design, reading: Reading): void {
  const { chamber, upright, throat } = design;
  if (!chamber && !upright) {
    if (reading.root().present && !reading.hasFault(['chamber']) && !reading.hasFault(['upright'])) {
      reading.fault(['chamber'], {
        code: 'missing',
        message: 'is missing: a pit needs a chamber, an upright, or both',
        allowed: 'chamber or upright',
        lacks: [['chamber'], ['upright']],
        value: null,
      });
    }
    return;
  }
  if (chamber && throat.through === 'top') {
    reading.fault(['throat', 'through'], {
      message: 'leads through the firebox roof, but a chamber stands between firebox and upright',
      allowed: 'end, or no chamber',
    });
  }
  checkGauge(design, reading);
}

/** A terrain changes nothing where the wind is the pit's own: who gives one means a station's wind. */
function checkTerrain({ site }: Design, reading: Reading): void {
  if (site.windAt === 'station' || !reading.at(['site']).has('terrain')) return;
  reading.fault(['site', 'terrain'], {
    code: 'unknown-name',
    message: 'says what stands around the pit, and the wind given is the one at the pit',
    allowed: 'with windAt: station, or left out',
    example: 'site: { wind: 10 mph, windAt: station, terrain: suburb }',
  });
}

function checkTarget(design: Design, reading: Reading): void {
  const { target } = design.fire;
  const { air } = design.site;
  if (target < air + LEAST_LEAD) {
    reading.fault(['fire', 'target'], {
      message: `is not above the outdoor air of ${format('temperature', air)}`,
      allowed: `more than ${format('temperature', air + LEAST_LEAD)}`,
    });
  }
}
