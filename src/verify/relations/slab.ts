/**
 * A slab that takes heat on one face and none on the other: the exact answer that a lining cut into slices must meet.
 */
import { bracketedRoot } from '../../solve/root.js';

/** Terms of the series; those that count fade as exp(-n^2 pi^2 Fo). */
const TERMS = 400;

/**
 * What is left of the first difference between a slab and its fluid: sum of 4 sin z/(2 z + sin 2z) exp(-z^2 Fo) cos(z
 * x), z tan z = Bi.
 * @param biot h L/k, on the thickness L
 * @param fourier k t/(rho c L^2)
 * @param place 0 at the face that takes no heat, 1 at the one that does
 * @returns (T - fluid)/(start - fluid)
 * @example slabDifference({ biot: 0.313, fourier: 5.64, place: 0 }) // 0.212
 * Reference: Incropera et al. (2007), 6th ed., eq. 5.39; Carslaw & Jaeger (1959), Conduction of Heat in Solids, 2nd
 * ed., sec. 3.11.
 */
export function slabDifference({ biot, fourier, place }: { biot: number; fourier: number; place: number }): number {
  let sum = 0;
  for (let n = 0; n < TERMS; n++) {
    const { root: z } = bracketedRoot((at) => at * Math.sin(at) - biot * Math.cos(at), {
      low: n * Math.PI,
      high: (n + 0.5) * Math.PI,
      tolerance: 1e-12,
    });
    const term = ((4 * Math.sin(z)) / (2 * z + Math.sin(2 * z))) * Math.exp(-z * z * fourier);
    sum += term * Math.cos(z * place);
    if (Math.abs(term) < 1e-12) break;
  }
  return sum;
}
