/** The shop's shelves: woods, finishes, insulation, steels, gauges, pipe and tube. Each file names the source of its rows. */
export { DEFAULT_FINISH, FINISHES, type FinishRow } from './catalog/finishes.js';
export { INSULATION_ALIASES, INSULATIONS, type InsulationRow } from './catalog/insulations.js';
export { STEELS, strengthLeft, type SteelRow } from './catalog/steels.js';
export { STOCK_TUBES, type StockTube } from './catalog/tubes.js';
export { WOODS, type WoodRow } from './catalog/woods.js';
export { gaugeNumbers, gaugeThickness, PIPES, type PipeSize } from '../units.js';
