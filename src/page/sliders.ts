/** How a slider's place becomes a builder's text, and back. */
import { siOf } from '../design/ranges.js';
import { convert, inchText, siIn, unitOf, type Kind } from '../units/index.js';

export interface Slider {
  /** number of places, from 0 to this */
  last: number;
  /** what the file says at a place */
  write(place: number): string;
  /** the place nearest to an SI value */
  place(si: number): number;
}

/** From, to and step in the usual unit of the trade. */
type Steps = readonly [from: number, to: number, step: number];

/** The slider of a number; without steps it goes through the thicknesses that a steel yard stocks. */
export function sliderOf(kind: Kind, steps?: Steps): Slider {
  if (!steps) return plate;
  if (kind === 'number') return count(steps);
  return kind === 'length' ? inches(steps) : even(kind, steps);
}

/** Even steps in a unit of the trade. */
function even(kind: Kind, [from, to, step]: Steps): Slider {
  const unit = unitOf(kind, 'shop').replace('²', '^2');
  const last = Math.round((to - from) / step);
  const number = (place: number) => Number((from + place * step).toPrecision(12));
  return {
    last,
    write: (place) => `${number(place).toLocaleString('en-US', { maximumFractionDigits: 6 })} ${unit}`,
    place: (si) => {
      const value = convert(kind, si, 'shop', { unit });
      return Math.min(last, Math.max(0, Math.round((value - from) / step)));
    },
  };
}

/** Inches, written with the shop's fractions. */
function inches(steps: Steps): Slider {
  const [from, , step] = steps;
  return {
    ...even('length', steps),
    write: (place) => inchText(siIn('length', from + place * step, 'in')),
  };
}

/** A plain count. */
function count([from, to]: Steps): Slider {
  return {
    last: to - from,
    write: (place) => String(from + place),
    place: (value) => Math.min(to - from, Math.max(0, Math.round(value) - from)),
  };
}

/** Thicknesses that a steel yard stocks: common practice, no source. */
const STOCK_PLATE = ['16 ga', '14 ga', '12 ga', '11 ga', '10 ga', '3/16 in', '1/4 in', '5/16 in', '3/8 in', '1/2 in', '5/8 in', '3/4 in', '1 in']; // prettier-ignore

const plate: Slider = (() => {
  const thicknesses = STOCK_PLATE.map((text) => siOf('plate', text));
  return {
    last: STOCK_PLATE.length - 1,
    write: (place) => STOCK_PLATE[place],
    place: (si) =>
      thicknesses.reduce((best, each, i) => (Math.abs(each - si) < Math.abs(thicknesses[best] - si) ? i : best), 0),
  };
})();
