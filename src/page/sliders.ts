/** How a slider's place becomes a builder's text, and back. */
import { convert, format, parseQuantity, type Kind } from '../units/index.js';

export interface Slider {
  /** number of places, from 0 to this */
  last: number;
  /** what the file says at a place */
  write(place: number): string;
  /** the place nearest to an SI value */
  place(si: number): number;
}

function siOf(kind: Kind, text: string): number {
  const read = parseQuantity(kind, text);
  if (!read.ok) throw new RangeError(`slider of ${kind}: '${text}' ${read.problem}`);
  return read.si;
}

/** Even steps in a unit of the trade. */
function steps(kind: Kind, unit: string, range: { from: number; to: number; step: number }): Slider {
  const { from, to, step } = range;
  const last = Math.round((to - from) / step);
  const number = (place: number) => Number((from + place * step).toPrecision(12));
  return {
    last,
    write: (place) => `${number(place).toLocaleString('en-US', { maximumFractionDigits: 6 })} ${unit}`,
    place: (si) => {
      const value = convert(kind, si, 'shop', kind === 'number' ? {} : { unit });
      return Math.min(last, Math.max(0, Math.round((value - from) / step)));
    },
  };
}

/** Inches, written with the shop's fractions. */
export function inches(from: number, to: number, step: number): Slider {
  const even = steps('length', 'in', { from, to, step });
  const inch = siOf('length', '1 in');
  return {
    ...even,
    write: (place) => {
      const value = from + place * step;
      return value === 0 ? '0 in' : format('length', value * inch, 'shop', {}).replace(/^(\d+) (\d+\/)/, '$1-$2');
    },
  };
}

export const squareInches = (from: number, to: number, step: number): Slider =>
  steps('area', 'in^2', { from, to, step });
export const fahrenheit = (from: number, to: number, step: number): Slider =>
  steps('temperature', '°F', { from, to, step });
export const milesPerHour = (from: number, to: number, step: number): Slider =>
  steps('speed', 'mph', { from, to, step });
export const heatPerHour = (from: number, to: number, step: number): Slider =>
  steps('power', 'BTU/h', { from, to, step });
export const percent = (step: number): Slider => steps('share', '%', { from: 0, to: 100, step });

/** A plain count. */
export function count(from: number, to: number): Slider {
  return {
    last: to - from,
    write: (place) => String(from + place),
    place: (value) => Math.min(to - from, Math.max(0, Math.round(value) - from)),
  };
}

/** Thicknesses that a steel yard stocks: common practice, no source. */
const STOCK_PLATE = ['16 ga', '14 ga', '12 ga', '11 ga', '10 ga', '3/16 in', '1/4 in', '5/16 in', '3/8 in', '1/2 in', '5/8 in', '3/4 in', '1 in']; // prettier-ignore

export const plate: Slider = (() => {
  const thicknesses = STOCK_PLATE.map((text) => siOf('plate', text));
  return {
    last: STOCK_PLATE.length - 1,
    write: (place) => STOCK_PLATE[place],
    place: (si) =>
      thicknesses.reduce((best, each, i) => (Math.abs(each - si) < Math.abs(thicknesses[best] - si) ? i : best), 0),
  };
})();
