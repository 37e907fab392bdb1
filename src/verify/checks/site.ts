/** Checks of sky, wind and contact burns. */
import { burnThreshold, longestContact, TOUCH_LIMIT } from '../../physics/burn.js';
import { choice, defineCheck, quantity, type Check } from '../check.js';
import {
  mcAdamsWind,
  smoothSurfaceWind,
  sparrowWind,
  tarpNatural,
  testUnitWind,
} from '../relations/buildingCoefficients.js';
import { cloudFactor, swinbankSky, windProfile } from '../relations/sky.js';

const wind = quantity('speed', 'wind');
const deltaT = quantity('temperatureDifference', 'surface less air');
const side = choice(['windward', 'leeward'], 'side of the building');

export const siteChecks: Record<string, Check> = {
  swinbankSky: defineCheck({
    about: 'clear-sky temperature (Swinbank)',
    inputs: { air: quantity('temperature', 'outdoor air') },
    result: 'temperature',
    run: (v) => swinbankSky(v.air),
  }),
  cloudFactor: defineCheck({
    about: 'factor of cloud on sky emissivity',
    inputs: { tenths: quantity('number', 'tenths of the sky covered') },
    result: 'number',
    run: (v) => cloudFactor(v.tenths),
  }),
  windProfile: defineCheck({
    about: 'wind at a height over that of a weather station',
    inputs: {
      height: quantity('length', 'above the ground'),
      terrain: choice(['open', 'suburban', 'city'], 'terrain'),
    },
    result: 'number',
    run: (v) => windProfile(v.height, v.terrain),
  }),
  mcAdamsWind: defineCheck({
    about: 'wind coefficient 5.7 + 3.8 V (building practice; not used by the tool)',
    inputs: { wind },
    result: 'coefficient',
    run: (v) => mcAdamsWind(v.wind),
  }),
  smoothSurfaceWind: defineCheck({
    about: 'wind coefficient of a very smooth surface (building practice; not used by the tool)',
    inputs: { wind },
    result: 'coefficient',
    run: (v) => smoothSurfaceWind(v.wind),
  }),
  tarpNatural: defineCheck({
    about: 'natural convection of building practice (not used by the tool)',
    inputs: { deltaT, stand: choice(['vertical', 'up', 'down'], 'vertical, or direction of heat flow') },
    result: 'coefficient',
    run: (v) => tarpNatural(v.deltaT, v.stand),
  }),
  sparrowWind: defineCheck({
    about: 'wind coefficient of a wall (building practice; not used by the tool)',
    inputs: {
      side,
      roughness: quantity('number', 'multiplier'),
      perimeter: quantity('length', 'of the wall'),
      area: quantity('area', 'of the wall'),
      wind,
    },
    result: 'coefficient',
    run: (v) => sparrowWind(v),
  }),
  testUnitWind: defineCheck({
    about: 'coefficient of a window test unit (building practice; not used by the tool)',
    inputs: { deltaT, wind, side },
    result: 'coefficient',
    run: (v) => testUnitWind(v.deltaT, v.wind, v.side),
  }),
  burnThreshold: defineCheck({
    about: 'temperature of bare metal below which a contact does not burn',
    inputs: { contact: quantity('time', 'length of contact') },
    result: 'temperature',
    run: (v) => burnThreshold(v.contact),
  }),
  longestContact: defineCheck({
    about: 'longest contact that stays below the threshold',
    inputs: { surface: quantity('temperature', 'of bare metal') },
    result: 'time',
    run: (v) => longestContact(v.surface),
  }),
  touchLimitContact: defineCheck({
    about: 'longest contact taken as safe at the touch limit of 60 °C, as used',
    inputs: {},
    result: 'time',
    run: () => TOUCH_LIMIT.contact,
  }),
};
