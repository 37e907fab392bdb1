/**
 * How far a flat plate gives under a push, and a door's leaf when a corner of it is pulled. Small deflections,
 * Poisson's ratio 0.3.
 */
import { POISSON, type PanelSize } from './panelBuckling.js';

/** Odd terms of the series along each side. */
const TERMS = 40;

/** Flexural rigidity E h3/(12 (1 - nu2)) [N m]. */
function rigidity(modulus: number, thickness: number): number {
  return (modulus * thickness ** 3) / (12 * (1 - POISSON ** 2));
}

/**
 * How far the middle of a panel gives under a force there, its edges supported and free to tilt: the most that welded
 * edges allow.
 *
 * Rectangle: Navier's series, 4 P/(pi4 D a b) sum of 1/(m2/a2 + n2/b2)2 over odd m and n, cut off at 79, which is 0.02
 * % short for a square. Disc: (3 + nu)/(1 + nu) P R2/(16 pi D).
 *
 * @param size sides or diameter [m]
 * @param thickness [m]; valid while it gives less than half of that
 * @param force [N]
 * @param modulus of elasticity [Pa]
 * @returns [m]
 * @example 1000 * pushedPanel({ a: 0.6, b: 0.6 }, 0.006, 100, 210e9) // 0.1005 mm
 * Reference: Timoshenko & Woinowsky-Krieger (1959), Theory of Plates and Shells, art. 34 and 19 (from memory); Roark's
 * Formulas for Stress and Strain, table 11.4, case 1b.
 */
export function pushedPanel(size: PanelSize, thickness: number, force: number, modulus: number): number {
  const d = rigidity(modulus, thickness);
  if ('diameter' in size) {
    return (((3 + POISSON) / (1 + POISSON)) * force * (size.diameter / 2) ** 2) / (16 * Math.PI * d);
  }
  const { a, b } = size;
  let sum = 0;
  for (let i = 0; i < TERMS; i++) {
    for (let j = 0; j < TERMS; j++) {
      sum += 1 / (((2 * i + 1) / a) ** 2 + ((2 * j + 1) / b) ** 2) ** 2;
    }
  }
  return (4 * force * sum) / (Math.PI ** 4 * d * a * b);
}

/**
 * How far a corner of a rectangular leaf comes out of its plane when it is pulled there and the other three stay where
 * they are: the leaf twists. P a b/(2 D (1 - nu)) = 3 P a b/(G h3).
 *
 * @param leaf sides [m]
 * @param thickness [m]
 * @param force at the corner [N]
 * @param modulus of elasticity [Pa]
 * @returns [m]
 * @example 1000 * twistedLeaf({ a: 0.5, b: 0.4 }, 0.006, 100, 210e9) // 3.439 mm
 * Reference: Timoshenko & Woinowsky-Krieger (1959), Theory of Plates and Shells, art. 11, pure twist (from memory).
 */
export function twistedLeaf(leaf: { a: number; b: number }, thickness: number, force: number, modulus: number): number {
  return (force * leaf.a * leaf.b) / (2 * rigidity(modulus, thickness) * (1 - POISSON));
}
