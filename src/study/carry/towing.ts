/** What a trailer carries on the way out and home, and where its axle or its pit should stand. */
import type { Trailer } from '../../design/design.js';
import { trailerLoads, type TrailerLoads } from './trailerLoads.js';

/** Tongue load that tows steadily, as a share of the whole weight: common practice, no source. */
export const TONGUE_BAND = { low: 0.1, high: 0.15 } as const;

/** What a weight is: wood and food are gone after a cook, water is let out when the pit is empty. */
type CarriedKind = 'gear' | 'wood' | 'food' | 'water';

/** A weight on a trailer. */
export interface Carried {
  mass_kg: number;
  position_m: number;
  /** absent: of the pit or the trailer itself, always there */
  kind?: CarriedKind;
  /** stands in or on the pit, and moves with it */
  ofPit?: boolean;
}

/** How far something may be moved, positive away from the hitch [m]; 0 between the two: it stands right. */
export interface Move {
  from_m: number;
  to_m: number;
}

/** What the trailer carries at one time of an outing. */
export interface TowCase {
  name: 'empty' | 'loaded' | 'after a cook';
  mass_kg: number;
  position_m: number;
  trailer: TrailerLoads;
  /** the tongue bears a share within the band */
  steady: boolean;
  /** of the axle, or of the pit with all in it instead, that puts this case into the band */
  axle: Move;
  pit: Move;
}

/** All those times, and what to move. */
export interface Towing {
  cases: TowCase[];
  /** moves that put every case into the band; null: none does, as the cases lie too far apart */
  axle: Move | null;
  pit: Move | null;
}

const CASES: readonly { name: TowCase['name']; without: readonly CarriedKind[] }[] = [
  { name: 'empty', without: ['gear', 'wood', 'food', 'water'] },
  { name: 'loaded', without: [] },
  { name: 'after a cook', without: ['wood', 'food'] },
];

/**
 * A trailer empty, loaded, and after a cook, which has burned the wood and eaten the food. What weighs the same as
 * another case is left out. Moving an axle counts as moving nothing else: the trailer's own weight stays where it
 * balances, though wheels go along.
 */
export function towingOf(trailer: Trailer, weights: readonly Carried[]): Towing {
  const there = (without: readonly CarriedKind[]) =>
    weights.filter(({ kind }) => kind === undefined || !without.includes(kind));
  const told = CASES.filter(({ name, without }) => name === 'loaded' || there(without).length < weights.length);
  const cases = told.map(({ name, without }) => caseOf(name, trailer, there(without)));
  return { cases, axle: shared(cases.map(({ axle }) => axle)), pit: shared(cases.map(({ pit }) => pit)) };
}

function caseOf(name: TowCase['name'], trailer: Trailer, weights: readonly Carried[]): TowCase {
  const { axle, hitch } = trailer;
  const sum = (of: (each: Carried) => number) => weights.reduce((total, each) => total + of(each), 0);
  const mass = sum(({ mass_kg }) => mass_kg);
  const position = sum(({ mass_kg, position_m }) => mass_kg * position_m) / mass;
  const pit = sum(({ mass_kg, ofPit }) => (ofPit ? mass_kg : 0));
  const loads = trailerLoads(trailer, mass, position);
  const away = Math.sign(axle - hitch);
  const between = (at: (share: number) => number): Move => {
    const ends = [at(TONGUE_BAND.low), at(TONGUE_BAND.high)].map((move) => away * move);
    return { from_m: Math.min(...ends), to_m: Math.max(...ends) };
  };
  return {
    name,
    mass_kg: mass,
    position_m: position,
    trailer: loads,
    steady: loads.tongueShare >= TONGUE_BAND.low && loads.tongueShare <= TONGUE_BAND.high,
    axle: between((share) => (position - share * hitch) / (1 - share) - axle),
    pit: between((share) => ((axle - share * (axle - hitch) - position) * mass) / pit),
  };
}

function shared(moves: readonly Move[]): Move | null {
  const from = Math.max(...moves.map(({ from_m }) => from_m));
  const to = Math.min(...moves.map(({ to_m }) => to_m));
  return from <= to ? { from_m: from, to_m: to } : null;
}
