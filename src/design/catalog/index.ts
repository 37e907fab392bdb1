/** The shop's shelves: woods, finishes, insulation, steels and tube. Each file names the source of its rows. */
export { DEFAULT_FINISH, FINISHES } from './finishes.js';
export { INSULATION_ALIASES, INSULATIONS } from './insulations.js';
export { LINING_ALIASES, LININGS } from './linings.js';
export { STEELS, strengthLeft } from './steels.js';
export { TANKS, type TankName } from './tanks.js';
export { STOCK_SQUARES, STOCK_TUBES } from './tubes.js';
export { WOODS } from './woods.js';
