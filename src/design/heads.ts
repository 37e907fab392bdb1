/** Heads of a round shell: what stands beyond the seam. A flat end is none of these. SI. */

export const HEADS = ['flat', 'dished', 'elliptical', 'hemispherical'] as const;
/** How the end of a tank is shaped. */
export type HeadKind = (typeof HEADS)[number];

/** A surface of revolution over a circle, without thickness. */
interface Cap {
  /** [m2], [m3] between it and the seam's plane */
  area: number;
  volume: number;
  /** how far it stands out, and how far the middle of its surface does [m] */
  depth: number;
  middle: number;
}

/**
 * Standard flanged and dished: crown radius by outside diameter, knuckle radius by outside diameter, both inside radii.
 */
const CROWN = 1;
const KNUCKLE = 0.06;

/**
 * Crown of one radius, knuckle of another, tangent to each other and to the shell.
 *
 * With c = D/2 - a and sin(w) = c/(R - a): depth h = R - (R - a) cos(w); V = pi/3 [2 h R2 - (2 a2 + c2 + 2 a R)(R - h)
 * + 3 a2 c asin((R - h)/(R - a))]; A = 2 pi R2 (1 - cos w) + 2 pi a [c (pi/2 - w) + a cos(w)].
 *
 * @param diameter of the shell [m]
 * @param crown its radius R [m]; at least half the diameter
 * @param knuckle its radius a [m]; to half the diameter
 * @example torispherical({ diameter: 1, crown: 1, knuckle: 0.06 }).depth // 0.169 m
 * Reference: Weisstein, "Torispherical dome", MathWorld; area by Pappus.
 */
export function torispherical({ diameter, crown, knuckle }: { diameter: number; crown: number; knuckle: number }): Cap {
  const c = diameter / 2 - knuckle;
  const angle = Math.asin(c / (crown - knuckle));
  const [sine, cosine] = [Math.sin(angle), Math.cos(angle)];
  const straight = (crown - knuckle) * cosine;
  const depth = crown - straight;
  const volume =
    (Math.PI / 3) *
    (2 * depth * crown ** 2 -
      (2 * knuckle ** 2 + c ** 2 + 2 * knuckle * crown) * straight +
      3 * knuckle ** 2 * c * Math.asin(cosine));
  const dish = 2 * Math.PI * crown ** 2 * (1 - cosine);
  const ring = 2 * Math.PI * knuckle * (c * (Math.PI / 2 - angle) + knuckle * cosine);
  const dishMoment = dish * ((crown * (1 + cosine)) / 2 - straight);
  const ringMoment = 2 * Math.PI * knuckle ** 2 * (c * (1 - sine) + (knuckle * cosine ** 2) / 2);
  const area = dish + ring;
  return { area, volume, depth, middle: (dishMoment + ringMoment) / area };
}

/**
 * Half an ellipsoid of revolution that stands out by no more than its radius: V = pi D2 h/6, A = pi r2 + (pi h2/e)
 * atanh(e), e = sqrt(1 - h2/r2).
 *
 * @param diameter of the shell [m]
 * @param depth h [m]; above 0, to half the diameter, where it is half a sphere
 * @example spheroidal({ diameter: 1, depth: 0.25 }).area // 1.084 m2
 * Reference: Weisstein, "Oblate spheroid", MathWorld.
 */
export function spheroidal({ diameter, depth }: { diameter: number; depth: number }): Cap {
  const r = diameter / 2;
  const volume = (2 / 3) * Math.PI * r ** 2 * depth;
  const e = Math.sqrt(Math.max(0, 1 - (depth / r) ** 2));
  if (e < 1e-4) return { area: 2 * Math.PI * r ** 2, volume, depth, middle: r / 2 };
  const area = Math.PI * (r ** 2 + (depth ** 2 / e) * Math.atanh(e));
  const moment = ((2 / 3) * Math.PI * r * depth * (r ** 3 - depth ** 3)) / (r ** 2 - depth ** 2);
  return { area, volume, depth, middle: moment / area };
}

/** A head of plate. Areas [m2], volumes [m3], lengths beyond the seam [m]. */
interface Head {
  outsideArea: number;
  insideArea: number;
  steelVolume: number;
  liningVolume: number;
  gasVolume: number;
  depth: number;
  middle: number;
}

/**
 * A head on a shell. Of a dished one the plate lies between two such caps of one middle; of the others it is the middle
 * surface times the plate. Elliptical: the inside is twice as wide as it is high over its middle, 2:1.
 *
 * A lining keeps its hot face at its thickness from the plate; where that fills a shallow head up, hardly any gas is
 * left in it.
 *
 * @param kind not flat
 * @param shell outside diameter, plate and lining [m]
 */
export function headOf(
  kind: Exclude<HeadKind, 'flat'>,
  { diameter, plate, lining = 0 }: { diameter: number; plate: number; lining?: number },
): Head {
  const bore = diameter - 2 * plate;
  if (kind === 'dished') {
    const knuckle = Math.min(KNUCKLE * diameter, bore / 2);
    const at = (by: number) =>
      torispherical({ diameter: bore + 2 * by, crown: CROWN * diameter + by, knuckle: Math.max(0, knuckle + by) });
    const [inside, middle, outside] = [at(0), at(plate / 2), at(plate)];
    return assembled(at(-lining), inside, middle, outside, outside.volume - inside.volume);
  }
  const share = kind === 'elliptical' ? 0.25 : 0.5;
  const at = (by: number) => spheroidal({ diameter: bore + 2 * by, depth: Math.max(1e-3 * bore, share * bore + by) });
  const [inside, middle, outside] = [at(0), at(plate / 2), at(plate)];
  return assembled(at(-lining), inside, middle, outside, middle.area * plate);
}

function assembled(hot: Cap, inside: Cap, middle: Cap, outside: Cap, steelVolume: number): Head {
  return {
    outsideArea: outside.area,
    insideArea: hot.area,
    steelVolume,
    liningVolume: inside.volume - hot.volume,
    gasVolume: hot.volume,
    depth: outside.depth,
    middle: middle.middle,
  };
}

/** How far the outside of a head stands out from its seam at a distance from the axis [m]. */
export function headReach(
  kind: Exclude<HeadKind, 'flat'>,
  { diameter, plate }: { diameter: number; plate: number },
  radius: number,
): number {
  const bore = diameter - 2 * plate;
  const off = Math.min(Math.abs(radius), diameter / 2);
  if (kind !== 'dished') {
    const depth = (kind === 'elliptical' ? 0.25 : 0.5) * bore + plate;
    return depth * Math.sqrt(1 - (off / (diameter / 2)) ** 2);
  }
  const inside = Math.min(KNUCKLE * diameter, bore / 2);
  const [crown, knuckle, c] = [CROWN * diameter + plate, inside + plate, bore / 2 - inside];
  const sine = c / (crown - knuckle);
  return off <= crown * sine
    ? Math.sqrt(crown ** 2 - off ** 2) - (crown - knuckle) * Math.sqrt(1 - sine ** 2)
    : Math.sqrt(Math.max(0, knuckle ** 2 - (off - c) ** 2));
}
