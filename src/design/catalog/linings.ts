/** What lines a steel box from inside: conductivity and specific heat against temperature, density. */
import type { ConductivityTable } from '../../physics/insulation.js';
import { INSULATIONS, type InsulationRow } from './insulations.js';

interface LiningRow extends Omit<InsulationRow, 'specificHeat' | 'knownTo'> {
  /** [J/(kg K)] against temperature */
  specificHeat: ConductivityTable;
  /** the figures rest on memory, not on print */
  fromMemory?: true;
}

const celsius = (...degrees: number[]): number[] => degrees.map((each) => each + 273.15);

/** Temperatures at which the VDI Heat Atlas prints refractories. */
const ATLAS = celsius(400, 600, 800, 1000, 1200);

/** Materials for inside the plate, by the names that a file takes. */
export const LININGS: Readonly<Record<string, LiningRow>> = {
  firebrick: {
    conductivity: INSULATIONS.firebrick.conductivity,
    density: INSULATIONS.firebrick.density,
    specificHeat: { temperatures: ATLAS, values: [956, 997, 1021, 1037, 1054] },
    maxTemperature: INSULATIONS.firebrick.maxTemperature,
    source: 'fireclay brick, VDI Heat Atlas, refractory table; limit from memory',
  },
  'insulating firebrick': {
    conductivity: { temperatures: ATLAS, values: [0.14, 0.16, 0.18, 0.2, 0.22] },
    density: 490,
    specificHeat: { temperatures: ATLAS, values: [942, 979, 1002, 1017, 1033] },
    maxTemperature: celsius(1260)[0],
    source: 'light refractory brick for 1260 °C (L1260), VDI Heat Atlas, refractory table',
  },
  'vermiculite board': {
    conductivity: { temperatures: celsius(200, 400, 600), values: [0.17, 0.19, 0.21] },
    density: 700,
    specificHeat: { temperatures: celsius(20, 600), values: [900, 1000] },
    maxTemperature: celsius(1100)[0],
    source: 'pressed board for stoves, from memory: an estimate (+-25 %)',
    fromMemory: true,
  },
  'refractory castable': {
    conductivity: { temperatures: celsius(400, 800, 1200), values: [0.9, 0.95, 1] },
    density: 2100,
    specificHeat: { temperatures: celsius(20, 400, 1000), values: [860, 960, 1060] },
    maxTemperature: celsius(1400)[0],
    source: 'dense fireclay castable, dried and fired, from memory: an estimate (+-25 %)',
    fromMemory: true,
  },
  'ceramic fibre board': {
    conductivity: { temperatures: celsius(200, 400, 600, 800, 1000), values: [0.06, 0.08, 0.11, 0.15, 0.2] },
    density: 280,
    specificHeat: { temperatures: celsius(20, 1000), values: [850, 1130] },
    maxTemperature: celsius(1260)[0],
    source: 'vacuum-formed board for 1260 °C, from memory: an estimate (+-25 %)',
    fromMemory: true,
  },
};

/** Other names a builder may use. */
export const LINING_ALIASES: Readonly<Record<string, string>> = {
  'fireclay brick': 'firebrick',
  'dense firebrick': 'firebrick',
  'fire brick': 'firebrick',
  'insulating fire brick': 'insulating firebrick',
  'soft firebrick': 'insulating firebrick',
  vermiculite: 'vermiculite board',
  castable: 'refractory castable',
  'refractory concrete': 'refractory castable',
  'ceramic fiber board': 'ceramic fibre board',
};
