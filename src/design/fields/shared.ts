/** Ranges and fields that several blocks share. */
import { PLATE, range } from '../ranges.js';
import { choice, maybe, quantity, type NumberOptions } from './field.js';
import { type Slider } from './fieldType.js';
import { STATIONS } from '../stations.js';

export const SHARE = range('share', '0 %', '100 %');
export const WIND = range('speed', '0 m/s', '30 m/s');
export const EMISSIVITY = range('share', '0.02', '1');
export const HEIGHT = range('length', '0 in', '20 ft');
const MASS = range('mass', '0.01 lb', '2000 lb');
/** of what gas flows through */
export const OPENING = range('area', '1 in^2', '25 ft^2');
export const AREA = range('area', '1 in^2', '1000 ft^2');

export const plate = (words: string, options: NumberOptions = {}) =>
  quantity(PLATE, words, { examples: ['1/4 in', '3/16 in', '11 ga', '6 mm'], ...options });

export const steel = (words: string) => choice(['carbon', 'stainless'], words, { default: 'carbon' });
export type SteelRow = ReturnType<typeof steel>;

export const station = (words: string) => maybe(STATIONS, words);

export const height = (words: string, label: string | readonly [string, string]) =>
  quantity(HEIGHT, words, { slider: { label, steps: [4, 120, 0.5], height: true } });

export const mass = () => quantity(MASS, 'Weight.');
export const area = (words: string) => quantity(AREA, words);

/** Slider of a size across a part. */
export const across = (label: string): Slider => ({ label, steps: [12, 48, 0.5] });
