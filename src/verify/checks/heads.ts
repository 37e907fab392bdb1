/** Checks of the heads of tanks. */
import { spheroidal, torispherical } from '../../design/heads.js';
import { choice, defineCheck, quantity, type Check } from '../check.js';

const diameter = quantity('length', 'of the shell, on the side that is meant');
const of = choice(['area', 'volume', 'depth', 'middle'], 'what of it, in m2, m3 or m');

export const headChecks: Record<string, Check> = {
  dishedHead: defineCheck(
    'a torispherical head beyond its seam',
    { diameter, crown: quantity('length', 'radius'), knuckle: quantity('length', 'radius'), of },
    'number',
    (v) => torispherical(v)[v.of],
  ),
  dishedTankVolume: defineCheck(
    'an upright tank with a torispherical bottom, filled to a height above its lowest point',
    {
      diameter,
      crown: quantity('length', 'radius'),
      knuckle: quantity('length', 'radius'),
      height: quantity('length', 'of the fill'),
    },
    'volume',
    (v) => {
      const { volume, depth } = torispherical(v);
      return volume + (Math.PI / 4) * v.diameter ** 2 * (v.height - depth);
    },
  ),
  ellipticalHead: defineCheck(
    'half an ellipsoid beyond its seam',
    { diameter, depth: quantity('length', 'how far it stands out'), of },
    'number',
    (v) => spheroidal(v)[v.of],
  ),
};
