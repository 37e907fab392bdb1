/**
 * Legal units that the trade's table lacks (kJ/h, furlongs, ft*in), through mathjs.
 *
 * Loaded only when a file holds such a unit: importing mathjs costs far more than reading the file. The unit text is
 * checked against a strict pattern and handed to `unit(value, text)`; nothing of a user's text is ever evaluated.
 * Temperatures stay out: an offset unit inside a product has no sound meaning.
 */
import { create, unitDependencies } from 'mathjs';
import type { Kind } from './kinds.js';
import type { OtherUnits } from './parse.js';

const SI: Partial<Record<Kind, string>> = {
  length: 'm',
  plate: 'm',
  area: 'm^2',
  volume: 'm^3',
  power: 'W',
  energy: 'J',
  mass: 'kg',
  massFlow: 'kg/s',
  volumeFlow: 'm^3/s',
  energyPerMass: 'J/kg',
  density: 'kg/m^3',
  pressure: 'Pa',
  speed: 'm/s',
  time: 's',
  perLength: '1/m',
  heatFlux: 'W/m^2',
};

const UNIT_TEXT = /^\(?[A-Za-z]{1,20}(\^-?[1-4])?\)?( ?[*/ ] ?\(?[A-Za-z]{1,20}(\^-?[1-4])?\)?){0,4}$/;
const TEMPERATURE = /deg[FCRK]|celsius|fahrenheit|kelvin|rankine/i;

const { unit } = create({ unitDependencies });

/** `OtherUnits` by mathjs. Returns undefined for text that is no unit, or a unit of another kind. */
export const mathUnits: OtherUnits = (kind, value, text) => {
  const target = SI[kind];
  const tidy = text
    .replace(/²/g, '^2')
    .replace(/³/g, '^3')
    .replace(/[·×]/g, '*')
    .replace(/([A-Za-z])([234])(?![\d^])/g, '$1^$2');
  if (!target || !UNIT_TEXT.test(tidy) || TEMPERATURE.test(tidy)) return undefined;
  try {
    const si = unit(value, tidy).toNumber(target);
    return Number.isFinite(si) ? si : undefined;
  } catch {
    return undefined;
  }
};
