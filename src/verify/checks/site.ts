/** Checks of sky, wind and contact burns. */
import { burnThreshold, longestContact, TOUCH_LIMIT } from '../../physics/burn.js';
import { TERRAIN_NAMES, windProfile } from '../../physics/windProfile.js';
import { choice, defineCheck, quantity, type Check } from '../check.js';
import {
  mcAdamsWind,
  smoothSurfaceWind,
  sparrowWind,
  tarpNatural,
  testUnitWind,
} from '../relations/buildingCoefficients.js';
import { cloudFactor, swinbankSky } from '../relations/sky.js';

const wind = quantity('speed', 'wind');
const deltaT = quantity('temperatureDifference', 'surface less air');
const side = choice(['windward', 'leeward'], 'side of the building');

export const siteChecks: Record<string, Check> = {
  swinbankSky: defineCheck(
    'clear-sky temperature (Swinbank)',
    { air: quantity('temperature', 'outdoor air') },
    'temperature',
    (v) => swinbankSky(v.air),
  ),
  cloudFactor: defineCheck(
    'factor of cloud on sky emissivity',
    { tenths: quantity('number', 'tenths of the sky covered') },
    'number',
    (v) => cloudFactor(v.tenths),
  ),
  windProfile: defineCheck(
    'wind at a height over that of a weather station',
    {
      height: quantity('length', 'above the ground'),
      terrain: choice(TERRAIN_NAMES, 'terrain'),
    },
    'number',
    (v) => windProfile(v.height, v.terrain),
  ),
  mcAdamsWind: defineCheck(
    'wind coefficient 5.7 + 3.8 V (building practice; not used by the tool)',
    { wind },
    'coefficient',
    (v) => mcAdamsWind(v.wind),
  ),
  smoothSurfaceWind: defineCheck(
    'wind coefficient of a very smooth surface (building practice; not used by the tool)',
    { wind },
    'coefficient',
    (v) => smoothSurfaceWind(v.wind),
  ),
  tarpNatural: defineCheck(
    'natural convection of building practice (not used by the tool)',
    { deltaT, stand: choice(['vertical', 'up', 'down'], 'vertical, or direction of heat flow') },
    'coefficient',
    (v) => tarpNatural(v.deltaT, v.stand),
  ),
  sparrowWind: defineCheck(
    'wind coefficient of a wall (building practice; not used by the tool)',
    {
      side,
      roughness: quantity('number', 'multiplier'),
      perimeter: quantity('length', 'of the wall'),
      area: quantity('area', 'of the wall'),
      wind,
    },
    'coefficient',
    (v) => sparrowWind(v),
  ),
  testUnitWind: defineCheck(
    'coefficient of a window test unit (building practice; not used by the tool)',
    { deltaT, wind, side },
    'coefficient',
    (v) => testUnitWind(v.deltaT, v.wind, v.side),
  ),
  burnThreshold: defineCheck(
    'temperature of bare metal below which a contact does not burn',
    { contact: quantity('time', 'length of contact') },
    'temperature',
    (v) => burnThreshold(v.contact),
  ),
  longestContact: defineCheck(
    'longest contact that stays below the threshold',
    { surface: quantity('temperature', 'of bare metal') },
    'time',
    (v) => longestContact(v.surface),
  ),
  touchLimitContact: defineCheck(
    'longest contact taken as safe at the touch limit of 60 °C, as used',
    {},
    'time',
    () => TOUCH_LIMIT.contact,
  ),
};
