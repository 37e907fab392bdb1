/**
 * The plate that two parts share: overlap of their cross-sections, set on one centre line.
 *
 * A section is round (diameter = width = height) or a box, with its middle at a height. Overlap area is the integral
 * over height of the smaller of the two widths.
 */
export interface Section {
  shape: 'round' | 'square';
  /** [m] */
  width: number;
  height: number;
  /** height of its middle above the ground [m] */
  centre: number;
}

interface Overlap {
  /** [m2] */
  area: number;
  /** height of its centroid above the ground [m] */
  centre: number;
  /** its lowest and highest point above the ground [m] */
  low: number;
  high: number;
}

const STRIPS = 400;

/** Width of a section at a height above the ground [m]. */
export function widthAt(section: Section, height: number): number {
  const offset = Math.abs(height - section.centre);
  if (offset >= section.height / 2) return 0;
  return section.shape === 'square'
    ? section.width
    : section.width * Math.sqrt(1 - ((2 * offset) / section.height) ** 2);
}

/** Area of a section [m2]. */
export function sectionArea(section: Section): number {
  return section.width * section.height * (section.shape === 'round' ? Math.PI / 4 : 1);
}

/**
 * Overlap of two sections on one centre line.
 *
 * Midpoint strips in theta, where height = middle + half sin(theta): the strips crowd where a round section closes, so
 * that its upright tangent costs nothing. Error under 1e-5 of the area (two equal circles against the lens formula, 2
 * r2 acos(d/2r) - d/2 sqrt(4 r2 - d2)).
 *
 * @returns area 0 and NaN centre when they do not meet; NaN throughout where a size is NaN
 */
export function overlap(a: Section, b: Section): Overlap {
  const low = Math.max(a.centre - a.height / 2, b.centre - b.height / 2);
  const high = Math.min(a.centre + a.height / 2, b.centre + b.height / 2);
  if (high <= low) return { area: 0, centre: NaN, low, high };
  const middle = (low + high) / 2;
  const half = (high - low) / 2;
  const step = Math.PI / STRIPS;
  let area = 0;
  let moment = 0;
  for (let i = 0; i < STRIPS; i++) {
    const theta = -Math.PI / 2 + (i + 0.5) * step;
    const height = middle + half * Math.sin(theta);
    const strip = Math.min(widthAt(a, height), widthAt(b, height)) * half * Math.cos(theta) * step;
    area += strip;
    moment += strip * height;
  }
  return { area, centre: moment / area, low, high };
}
