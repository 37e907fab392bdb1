/** Where and in what weather a pit stands, its wood and its fire. */
import { TERRAIN_NAMES } from '../../physics/windProfile.js';
import { netHeatAsFired, type WoodComposition } from '../../physics/wood.js';
import { bedHeat } from '../bed.js';
import { WOODS } from '../catalog/index.js';
import { range } from '../ranges.js';
import type { Fields } from '../reading.js';

import { minding, splits } from './cook.js';
import { block, optional, readRows, usual, where } from './blocks.js';
import { choice, factor, quantity } from './field.js';
import { type Read, type Soft } from './fieldType.js';
import { SHARE, WIND } from './shared.js';

const PRESSURE = range('number', '-2', '2');

export const site = block('Where and in what weather it stands.', {
  air: quantity(range('temperature', '-40 °C', '50 °C'), 'Outdoor air temperature.', {
    default: '70 °F',
    examples: ['70 °F'],
    slider: { label: 'Outdoor air', steps: [-20, 110, 1] },
  }),
  wind: quantity(WIND, 'Wind speed at the pit, or as the weather station has it.', {
    default: '5 mph',
    slider: { label: 'Wind', steps: [0, 30, 0.5] },
    unknown: { kind: 'wind', label: 'how windy it really is' },
  }),
  windAt: choice(
    ['pit', 'station'],
    'Where that wind is measured: where the pit stands, or 10 m up in open country, from where it is brought to the height of the pit.',
    { default: 'pit' },
  ),
  terrain: where(
    ({ windAt }) => windAt === 'station',
    choice(
      TERRAIN_NAMES,
      'What stands around the pit where the wind is a station’s: open country, a suburb or wood, a city centre.',
      { default: 'open' },
    ),
  ),
  altitude: quantity(range('length', '-400 m', '5000 m'), 'Altitude above sea level.', {
    default: '0 ft',
    print: { shop: 'ft', si: 'm' },
  }),
  humidity: quantity(SHARE, 'Relative humidity.', { default: '50 %' }),
  surroundings: quantity(range('temperature', '-80 °C', '80 °C'), 'Radiant temperature of the surroundings.', {
    default: ({ air }) => air as number,
    says: 'the air’s',
  }),
  sun: quantity(range('heatFlux', '0 W/m2', '1400 W/m2'), 'Sunshine on a level surface.', {
    default: '0 W/m2',
    says: 'none',
  }),
  rain: quantity(SHARE, 'Share of the upward-facing outside kept wet by rain.', { default: '0 %' }),
  windPressure: usual(
    block(null, {
      intake: quantity(PRESSURE, 'Wind pressure coefficient on the intakes.', { default: '0', print: { bare: true } }),
      stack: quantity(PRESSURE, 'Wind pressure coefficient on the stack tops.', {
        default: '0',
        print: { bare: true },
      }),
    }),
  ),
});

const COMPOSITION = {
  carbon: quantity(SHARE, 'Carbon, share of dry wood.'),
  hydrogen: quantity(SHARE, 'Hydrogen, share of dry wood.'),
  oxygen: quantity(SHARE, 'Oxygen, share of dry wood.'),
  nitrogen: quantity(SHARE, 'Nitrogen, share of dry wood.', { default: '0' }),
  ash: quantity(SHARE, 'Ash, share of dry wood.', { default: ashLeft, says: 'what the others leave' }),
};

function ashLeft(parts: Soft): number {
  const { carbon, hydrogen, oxygen, nitrogen } = parts as Record<string, number>;
  return Math.max(0, 1 - carbon - hydrogen - oxygen - nitrogen);
}

function readComposition(parts: Fields, around: Soft): WoodComposition {
  const { carbon, hydrogen, oxygen, nitrogen, ash } = readRows(COMPOSITION, parts, around);
  const sum = carbon + hydrogen + oxygen + nitrogen + ash;
  const percent = `${(100 * sum).toFixed(1)} %`;
  if (sum > 1.005 || sum < 0.995) {
    parts.reading.fault(parts.path, {
      message: `adds up to ${percent}`,
      allowed: 'shares that add up to 100 %, to half a percent',
    });
  }
  if (carbon < 0.3 || hydrogen > 0.15) {
    parts.reading.fault(parts.path, { message: 'is not wood', allowed: 'carbon from 30 %, hydrogen to 15 %' });
  }
  // Printed analyses are rounded; the half percent left is shared out so that no mass is lost in the flame.
  const share = (part: number): number => part / sum;
  return {
    carbon: share(carbon),
    hydrogen: share(hydrogen),
    oxygen: share(oxygen),
    nitrogen: share(nitrogen),
    ash: share(ash),
  };
}

const WOOD = {
  kind: choice(Object.keys(WOODS), 'Wood.', { default: 'generic' }),
  moisture: quantity(range('share', '0 %', '60 %'), 'Moisture, share of the wet weight.', {
    default: '20 %',
    unknown: { kind: 'moisture', label: 'how wet the wood is' },
  }),
  heat: quantity(
    range('energyPerMass', '4 MJ/kg', '22 MJ/kg'),
    'Net heat as burned, instead of the one that follows from moisture.',
    {
      default: ({ moisture }) => netHeatAsFired(moisture as number),
      unknown: { kind: 'woodHeat', label: 'heat that a pound of wood gives' },
    },
  ),
  composition: usual(block('Ultimate analysis, instead of the catalog’s.', COMPOSITION, readComposition)),
};

export const wood = block('The wood that is burned.', WOOD, (fields, around) => {
  if (fields.has('composition')) return readRows(WOOD, fields, around);
  const own = readRows(WOOD, fields, around, { composition: undefined });
  for (const part of Object.keys(COMPOSITION)) fields.child('composition').defaulted(part);
  return { ...own, composition: { ...WOODS[own.kind].composition } };
});

const FIRE_HEAT = range('power', '500 W', '500 kW');

const FIRE = {
  heat: quantity(FIRE_HEAT, 'Heat release of the full fire, or its wood per hour. Default: what this box can burn.', {
    default: (own, around) => bedFire(own as { bed?: number }, around),
    says: '',
    examples: ['70,000 BTU/h', '20 kW', '10 lb wood/h'],
    slider: { label: 'Fire', steps: [10_000, 250_000, 1_000] },
    unknown: { kind: 'heat', label: 'how big the fire really is' },
  }),
  rise: quantity(range('time', '1 s', '2 h'), 'Time constant of its rise.', {
    default: '10 min',
    guess: true,
    unknown: { kind: 'rise', label: 'how fast the fire comes up' },
  }),
  radiant: factor(
    range('share', '0', '0.6'),
    'Share that leaves the fuel bed as radiation.',
    { default: '0.30', guess: '0.20-0.45' },
    { kind: 'radiant', label: 'heat that leaves as radiation' },
  ),
  soot: quantity(range('perLength', '0 per m', '5 per m'), 'Soot absorption in the firebox.', {
    default: '0.5 per m',
    guess: '0-1.2',
    print: { digits: 2 },
    unknown: { kind: 'soot', label: 'soot in the firebox gas' },
  }),
  target: quantity(range('temperature', '100 °F', '700 °F'), 'Cook temperature wanted on the thermometer.', {
    slider: { label: 'Cook at', steps: [150, 450, 5] },
  }),
  splits: usual(splits),
  cook: usual(minding),
  coals: optional(
    quantity(
      range('mass', '0 lb', '60 lb'),
      'Charcoal that a cook is lit with, in a chimney. Default: as much as would hold the pit at first.',
    ),
  ),
  bed: optional(
    quantity(
      range('area', '1 in^2', '100 ft^2'),
      'Plan of the bed of coals, as large as its grate. Default: half of the firebox’s plan (estimate, spread a third to all of it).',
    ),
  ),
};

/** The largest fire that a bed makes [W], within the range of fires. */
function bedFire({ bed }: { bed?: number }, { firebox }: Soft): number {
  const release = bedHeat({ fire: { bed }, firebox: firebox as { width: number; length: number } });
  return Number.isFinite(release) ? Math.min(FIRE_HEAT.max, Math.max(FIRE_HEAT.min, release)) : NaN;
}

/** Where the full fire comes from, when the file gives none: what the bed makes, until the air is reckoned too. */
type HeatOf = 'box' | 'bed' | 'air';

export const fire = block(
  'The fire and the temperature wanted.',
  FIRE,
  (fields, around): Read<typeof FIRE> & { heatOf?: HeatOf } => {
    if (!fields.has('heat')) return { ...readRows(FIRE, fields, around, {}, ['bed']), heatOf: 'box' };
    return readRows(FIRE, fields, around, { heat: givenHeat(fields, around) });
  },
);

function givenHeat(fields: Fields, around: Soft): number {
  const read = fields.read('heat', FIRE_HEAT);
  const heat = read?.si ?? NaN;
  if (!read?.wood) return heat;
  const power = Number((read.si * (around.wood as { heat: number }).heat).toPrecision(12));
  return fields.within('heat', FIRE_HEAT, power) || power > 0 ? power : NaN;
}
