/** How a slider's place becomes a builder's text, and back. */
import { siOf } from '../design/ranges.js';
import { convert, findUnit, inchText, parseQuantity, siIn, unitOf, type Kind } from '../units/index.js';

/** The places of a slider, and what each of them means. */
export interface Slider {
  /** number of places, from 0 to this */
  last: number;
  /** of its places, as a file writes it; empty for a plain number */
  unit: string;
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
    unit,
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
    unit: '',
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
    unit: 'in',
    write: (place) => STOCK_PLATE[place],
    place: (si) =>
      thicknesses.reduce((best, each, i) => (Math.abs(each - si) < Math.abs(thicknesses[best] - si) ? i : best), 0),
  };
})();

/** The next thickness that a steel yard stocks; undefined: there is none. */
export function nextPlate(plate: number, way: 'thinner' | 'heavier'): string | undefined {
  const apart = (text: string) => siOf('plate', text) - plate;
  return way === 'thinner'
    ? STOCK_PLATE.findLast((text) => apart(text) < -1e-5)
    : STOCK_PLATE.find((text) => apart(text) > 1e-5);
}

/** What stands behind the number of a field. */
export function unitIn(written: string): string {
  return /^[-\d.,]+(?:[\s-]+\d+)?(?:\/\d+)?\s*([^\d\s].*)$/.exec(written.trim())?.[1] ?? '';
}

/** Units that a bare number is not taken in: a field that says 5 ft gets its 66 in inches. */
const NOT_BARE = new Set(['ft', 'yd']);

/**
 * A number without a unit in its field's own one: that which the field was written in, else that of the slider.
 * Everything else stays as it is typed.
 *
 * @param written what the field holds so far
 */
export function withOwnUnit(kind: Kind, { unit }: Slider, typed: string, written: string): string {
  const read = parseQuantity(kind, typed);
  // a share may be written plainly, but 80 where % stand means 80 %
  if (kind === 'share' && read.ok && read.si > 1 && /^[\d.,\s]+$/.test(typed)) return `${typed.trim()} %`;
  if (read.ok || read.code !== 'no-unit') return typed;
  const own = unitIn(written);
  const row = findUnit(kind, own);
  const wood = kind === 'power' && /wood/i.test(own);
  return `${typed.trim()} ${wood || (row && !NOT_BARE.has(row.name)) ? own : unit}`;
}
