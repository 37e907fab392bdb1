/** The shop's shelves: woods, finishes, insulation, steels and tube. Each file names the source of its rows. */
export { DEFAULT_FINISH, FINISHES, type FinishRow } from './finishes.js';
export { INSULATION_ALIASES, INSULATIONS, type InsulationRow } from './insulations.js';
export { LINING_ALIASES, LININGS, type LiningRow } from './linings.js';
export { STEELS, strengthLeft, type SteelRow } from './steels.js';
export { TANKS, type TankName } from './tanks.js';
export { STOCK_SQUARES, STOCK_TUBES, type SquareTube, type StockTube } from './tubes.js';
export { WOODS, type WoodRow } from './woods.js';
