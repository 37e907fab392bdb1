import { INSULATIONS } from '../design/catalog/index.js';

export const INSULATION_NAMES = Object.keys(INSULATIONS);

/** What a part is wrapped in when the page first wraps it: the one with printed values for hot plate. */
export const DEFAULT_INSULATION_NAME = 'ceramic fibre';
