/**
 * Checks of the figures on the tool's shelves: woods, finishes, insulation, gauges, pipe. Each gives the figure as
 * used.
 */
import { FINISHES, INSULATIONS, LININGS, STEELS, strengthLeft, WOODS } from '../../design/catalog/index.js';
import { readDesign } from '../../design/read.js';
import { layerConductivity, layerHeat, layerSpecificHeat } from '../../physics/insulation.js';
import { DRY_NET_HEAT, waterFormed } from '../../physics/wood.js';
import { gaugeNumbers, gaugeThickness, PIPES } from '../../units/index.js';
import { choice, defineCheck, quantity, type Check } from '../check.js';
import { LATENT_HEAT_25C } from '../relations/combustion.js';

const names = (shelf: object) => Object.keys(shelf);
const wood = choice(names(WOODS), 'wood of the catalog');
const material = choice(names(INSULATIONS), 'insulation of the catalog');
const lining = choice(names(LININGS), 'lining of the catalog');
const gauge = quantity('number', 'gauge number');
const nominal = quantity('number', 'nominal pipe size');

/** A pipe size of the shelf. @throws RangeError when there is none */
export function pipeOf(size: number) {
  const pipe = PIPES.find((each) => each.nominal === size);
  if (!pipe)
    throw new RangeError(`pipe ${size} is not listed; sizes are ${PIPES.map((each) => each.nominal).join(', ')}`);
  return pipe;
}

function present(value: number | undefined, what: string): number {
  if (value === undefined) throw new RangeError(`the catalog has no ${what}`);
  return value;
}

/** The least that a design must say; everything else is the tool's default. */
const BARE_DESIGN = JSON.stringify({
  schema: 1,
  name: 'defaults',
  fire: { heat: '70,000 BTU/h', target: '250 °F' },
  firebox: {
    shape: 'round',
    diameter: '24 in',
    length: '24 in',
    plate: '1/4 in',
    centre: '30 in',
    intakes: [{ kind: 'disc', diameter: '4 in', centre: '26 in' }],
  },
  chamber: { shape: 'round', diameter: '24 in', length: '60 in', plate: '1/4 in', centre: '40 in' },
  throat: { area: '90 in^2', centre: '34 in' },
  stacks: [{ part: 'chamber', diameter: '6 in', height: '36 in', wall: '11 ga', base: '42 in' }],
});

function defaultDesign() {
  const read = readDesign(BARE_DESIGN, { fileName: 'defaults' });
  if (!read.design)
    throw new RangeError(`the bare design is not accepted: ${read.faults.map((each) => each.message).join('; ')}`);
  return read.design;
}

/** Checks of what the catalog holds and what a design is given by default. */
export const catalogChecks: Record<string, Check> = {
  ventDischarge: defineCheck(
    'discharge coefficient that a vent takes when the design gives none',
    {},
    'number',
    () => defaultDesign().firebox.intakes[0].discharge,
  ),
  grossHeatAsUsed: defineCheck(
    'gross heat of dry wood that the net heat of the catalog comes to, for its generic wood',
    {},
    'energyPerMass',
    () => DRY_NET_HEAT + LATENT_HEAT_25C * waterFormed(WOODS.generic.composition.hydrogen),
  ),
  woodElement: defineCheck(
    'mass share of an element in a dry wood of the catalog',
    { wood, of: choice(['carbon', 'hydrogen', 'oxygen', 'nitrogen', 'ash'], 'element') },
    'share',
    (v) => WOODS[v.wood].composition[v.of],
  ),
  woodPrintedHeat: defineCheck(
    'heat printed with the analysis of a wood (kept, not used)',
    { wood },
    'energyPerMass',
    (v) => present(WOODS[v.wood].printedHeat, `printed heat of ${v.wood}`),
  ),
  woodDensity: defineCheck('air-dry density of a wood of the catalog', { wood }, 'density', (v) =>
    present(WOODS[v.wood].density, `density of ${v.wood}`),
  ),
  finishEmissivity: defineCheck(
    'emissivity of a finish of the catalog',
    { finish: choice(names(FINISHES), 'finish of the catalog') },
    'number',
    (v) => FINISHES[v.finish].emissivity,
  ),
  insulationConductivity: defineCheck(
    'conductivity of an insulation of the catalog',
    { material, temperature: quantity('temperature', 'of the layer') },
    'conductivity',
    (v) => layerConductivity(INSULATIONS[v.material].conductivity, v.temperature),
  ),
  insulationDensity: defineCheck(
    'density of an insulation of the catalog',
    { material },
    'density',
    (v) => INSULATIONS[v.material].density,
  ),
  insulationSpecificHeat: defineCheck(
    'specific heat of an insulation of the catalog',
    { material },
    'specificHeat',
    (v) => INSULATIONS[v.material].specificHeat,
  ),
  liningConductivity: defineCheck(
    'conductivity of a lining of the catalog',
    { lining, temperature: quantity('temperature', 'of the layer') },
    'conductivity',
    (v) => layerConductivity(LININGS[v.lining].conductivity, v.temperature),
  ),
  liningSpecificHeat: defineCheck(
    'specific heat of a lining of the catalog',
    { lining, temperature: quantity('temperature', 'of the layer') },
    'specificHeat',
    (v) => layerSpecificHeat(LININGS[v.lining].specificHeat, v.temperature),
  ),
  liningHeat: defineCheck(
    'heat that a lining of the catalog takes up between two temperatures',
    { lining, from: quantity('temperature', 'at first'), to: quantity('temperature', 'at last') },
    'energyPerMass',
    (v) => layerHeat(LININGS[v.lining].specificHeat, v.to) - layerHeat(LININGS[v.lining].specificHeat, v.from),
  ),
  liningDensity: defineCheck(
    'density of a lining of the catalog',
    { lining },
    'density',
    (v) => LININGS[v.lining].density,
  ),
  steelLimit: defineCheck(
    'temperature from which a steel scales away in air, or creeps',
    { steel: choice(['carbon', 'stainless'], 'steel'), of: choice(['scaling', 'creep'], 'which') },
    'temperature',
    (v) => STEELS[v.steel][v.of].limit,
  ),
  strengthLeft: defineCheck(
    'yield strength of carbon steel over that when cold',
    { temperature: quantity('temperature', 'steel temperature') },
    'number',
    (v) => strengthLeft(v.temperature),
  ),
  gaugeThickness: defineCheck(
    'thickness of a sheet gauge',
    { gauge, steel: choice(['carbon', 'stainless'], 'table') },
    'length',
    (v) => present(gaugeThickness(v.gauge, v.steel), `gauge ${v.gauge} (it has ${gaugeNumbers(v.steel).join(', ')})`),
  ),
  pipeDiameter: defineCheck(
    'outside diameter of a pipe size',
    { nominal },
    'length',
    (v) => pipeOf(v.nominal).diameter,
  ),
  pipeWall: defineCheck(
    'wall of a pipe size and schedule',
    { nominal, schedule: choice(['10', '20', '30', '40', 'std', 'xs'], 'schedule') },
    'length',
    (v) => present(pipeOf(v.nominal).walls[v.schedule], `schedule ${v.schedule} of pipe ${v.nominal}`),
  ),
};
