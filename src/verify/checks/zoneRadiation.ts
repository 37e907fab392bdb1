/**
 * Checks of radiation inside a zone: surfaces through the surface node, gas to wall, gas as the network makes it up.
 */
import { gasWallFactor, surfaceConductance } from '../../physics/surfaceNode.js';
import { zoneEmissivity } from '../../physics/gasRadiation.js';
import { blackPower } from '../../physics/radiation.js';
import { defineCheck, list, quantity, type Check } from '../check.js';

const share = (gas: string) => quantity('share', `mass fraction of ${gas}`);

export const zoneRadiationChecks: Record<string, Check> = {
  surfaceNodeHeat: defineCheck(
    'net heat that a surface gives off through the surface node of its zone',
    {
      areas: list('area', 'of each surface'),
      emissivities: list('number', 'of each surface'),
      temperatures: list('temperature', 'of each surface'),
      gasEmissivity: quantity('number', 'of the gas between; 0 for clear'),
      surface: quantity('number', 'number of the surface, from 1'),
    },
    'power',
    ({ areas, emissivities, temperatures, gasEmissivity, surface }) => {
      const links = areas.map((area, i) => surfaceConductance(area, emissivities[i], gasEmissivity));
      const powers = temperatures.map(blackPower);
      if (!links[surface - 1]) throw new RangeError(`surfaceNodeHeat: there is no surface ${surface}`);
      const surfaceNode =
        links.reduce((sum, link, i) => sum + link * powers[i], 0) / links.reduce((sum, link) => sum + link, 0);
      return links[surface - 1] * (powers[surface - 1] - surfaceNode);
    },
  ),
  gasWallFactor: defineCheck(
    'share of the black difference that gas and a grey wall exchange',
    { gasEmissivity: quantity('number', 'of the gas'), emissivity: quantity('number', 'of the wall') },
    'number',
    (v) => gasWallFactor(v.gasEmissivity, v.emissivity),
  ),
  zoneEmissivity: defineCheck(
    'emissivity of a gas from its mass fractions, soot included',
    {
      temperature: quantity('temperature', 'gas temperature'),
      nitrogen: share('nitrogen'),
      oxygen: share('oxygen'),
      dioxide: share('carbon dioxide'),
      water: share('water vapour'),
      pressure: quantity('pressure', 'absolute'),
      beam: quantity('length', 'mean beam length'),
      soot: quantity('perLength', 'absorption coefficient of soot'),
    },
    'number',
    (v) => zoneEmissivity(v.temperature, v.nitrogen, v.oxygen, v.dioxide, v.water, v.pressure, v.beam, v.soot),
  ),
};
