/** Ranges and fields that several blocks share. */
import { PLATE, range } from '../ranges.js';
import { choice, maybe, quantity, type NumberOptions } from './field.js';
import { type Slider } from './fieldType.js';
import { STATIONS } from '../stations.js';

/** A part of a whole. */
export const SHARE = range('share', '0 %', '100 %');
/** Speeds of wind that are taken. */
export const WIND = range('speed', '0 m/s', '30 m/s');
/** What a surface may radiate, of what a black one does. */
export const EMISSIVITY = range('share', '0.02', '1');
/** Heights above the ground that are taken. */
export const HEIGHT = range('length', '0 in', '20 ft');
const MASS = range('mass', '0.01 lb', '2000 lb');
/** of what gas flows through */
export const OPENING = range('area', '1 in^2', '25 ft^2');
/** Areas that are taken. */
export const AREA = range('area', '1 in^2', '1000 ft^2');

/** A thickness of plate or sheet, gauges among them. */
export const plate = (words: string, options: NumberOptions = {}) =>
  quantity(PLATE, words, { examples: ['1/4 in', '3/16 in', '11 ga', '6 mm'], ...options });

/** Which steel something is of. */
export const steel = (words: string) => choice(['carbon', 'stainless'], words, { default: 'carbon' });
/** The field that names a steel. */
export type SteelRow = ReturnType<typeof steel>;

/** A station, or none. */
export const station = (words: string) => maybe(STATIONS, words);

/** A height above the ground with its slider on the page. */
export const height = (words: string, label: string | readonly [string, string]) =>
  quantity(HEIGHT, words, { slider: { label, steps: [4, 120, 0.5], height: true } });

/** A weight. */
export const mass = () => quantity(MASS, 'Weight.');
/** An area. */
export const area = (words: string) => quantity(AREA, words);

/** Slider of a size across a part. */
export const across = (label: string): Slider => ({ label, steps: [12, 48, 0.5] });
