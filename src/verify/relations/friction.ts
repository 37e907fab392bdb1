import { haaland } from '../../physics/friction.js';

/**
 * Darcy friction factor after Colebrook and White, f^(-1/2) = -2 log10[e/3.7 + 2.51/(Re f^(1/2))], by fixed-point steps
 * from Haaland's value.
 * @param Re above 4000
 * @param relativeRoughness [-]; 0-0.05
 * @returns [-]
 * Reference: Colebrook (1939), J. Inst. Civ. Eng. 11, 133-156.
 */
export function colebrook(Re: number, relativeRoughness: number): number {
  let root = 1 / Math.sqrt(haaland(Re, relativeRoughness));
  for (let n = 0; n < 100; n++) {
    const next = -2 * Math.log10(relativeRoughness / 3.7 + (2.51 * root) / Re);
    if (Math.abs(next - root) < 1e-14) return 1 / (next * next);
    root = next;
  }
  return 1 / (root * root);
}
