/** Friction of flow in stacks and ducts, and single losses. Darcy (not Fanning) friction factors throughout. */

const LAMINAR_END = 2300;
const TURBULENT_START = 4000;
/** Below this the laminar factor is held, so that it stays finite when flow stops. */
const SLOWEST = 1e-3;

/**
 * What roughness adds in `haaland`, (e/3.7)^1.11: dear, and the same whatever flows.
 * @param relativeRoughness roughness over diameter [-]; 0-0.05
 * @returns [-]
 * @example roughnessTerm(0.037) // 0.006026
 * Reference: Haaland (1983), J. Fluids Eng. 105, 89-90.
 */
export function roughnessTerm(relativeRoughness: number): number {
  return Math.pow(relativeRoughness / 3.7, 1.11);
}

function haalandTurbulent(Re: number, rough: number): number {
  const root = -1.8 * Math.log10(rough + 6.9 / Re);
  return 1 / (root * root);
}

/**
 * Darcy friction factor, explicit: 64/Re below 2300; f^(-1/2) = -1.8 log10[(e/3.7)^1.11 + 6.9/Re] above 4000; linear in
 * Re between, so that it is continuous. Held at its value for Re 0.001 below that.
 * @param Re on the hydraulic diameter; by its size
 * @param relativeRoughness roughness over diameter [-]; 0-0.05
 * @param rough its `roughnessTerm` [-], where that is known already
 * @returns [-]
 * @example haaland(1e5, 0) // 0.0178
 * Reference: Haaland (1983), J. Fluids Eng. 105, 89-90; within 2 % of Colebrook.
 */
export function haaland(Re: number, relativeRoughness: number, rough = roughnessTerm(relativeRoughness)): number {
  const size = Math.max(Math.abs(Re), SLOWEST);
  if (size <= LAMINAR_END) return 64 / size;
  if (size >= TURBULENT_START) return haalandTurbulent(size, rough);
  const share = (size - LAMINAR_END) / (TURBULENT_START - LAMINAR_END);
  return ((1 - share) * 64) / LAMINAR_END + share * haalandTurbulent(TURBULENT_START, rough);
}

/** Loss coefficient of a sharp, flush entrance [-]. Idelchik, Handbook of Hydraulic Resistance; Crane TP-410. */
export const ENTRANCE_LOSS = 0.5;

/** Loss coefficient of the exit into still air: the whole velocity head [-]. */
export const EXIT_LOSS = 1;

/**
 * Sudden expansion, K = (1 - A1/A2)^2 on the small side.
 * @param areaRatio small over large area [-]; 0-1
 * @returns [-]
 * @example expansionLoss(0.25) // 0.5625
 * Reference: Borda-Carnot relation.
 */
export function expansionLoss(areaRatio: number): number {
  return (1 - areaRatio) * (1 - areaRatio);
}

/**
 * Flow coefficient of a channel with losses in series, Cd = 1/sqrt(K_entry + f L/D + K_others + K_exit).
 * @param losses sum of the loss coefficients and of f L/D [-]; above 0
 * @returns [-]
 * @example dischargeFromLosses(4) // 0.5
 * Reference: energy equation of pipe flow.
 */
export function dischargeFromLosses(losses: number): number {
  return 1 / Math.sqrt(losses);
}

/**
 * Share of an opening's area that the jet through a plate across a pipe narrows to, 0.63 + 0.37 a^3.
 * @param open share of the bore that the plate leaves open [-]; 0-1
 * @returns [-]
 * @example contraction(0.5) // 0.676
 * Reference: fit to Weisbach's measurements of a diaphragm in a pipe, within 3 %.
 */
export function contraction(open: number): number {
  return 0.63 + 0.37 * open ** 3;
}

/**
 * Loss of a damper that leaves a share of the bore open, on the velocity in the full bore: the jet of area c a spreads
 * again, (1/(c a) - 1)^2.
 * @param open share of the bore left open [-]; above 0, to 1
 * @returns [-]; 0 when it is wide open
 * @example damperLoss(0.5) // 3.83
 * Reference: Borda-Carnot past Weisbach's vena contracta.
 */
export function damperLoss(open: number): number {
  const jet = contraction(open) * open;
  return expansionLoss(jet) / (jet * jet);
}
