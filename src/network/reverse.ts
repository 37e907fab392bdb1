import type { Chamber } from '../design/design.js';
import type { Face, PartGeometry } from '../design/geometry.js';

/** The share of a chamber that lies below or above a reverse-flow plate. */
export interface PlateSplit {
  section: number;
  floor: number;
  roof: number;
  /** share of a face's area on this side of the plate */
  share(face: Face): number;
}

/**
 * Cut a chamber by its reverse-flow plate: cross-sections above and below, shares of shell and ends, width of the plate.
 *
 * Round: circular segment of height h in the bore, area r^2/2 (w - sin w), arc r w, chord 2 r sin(w/2), w the angle it
 * spans. Square: straight proportions.
 */
export function splitByPlate(
  chamber: Chamber,
  geometry: PartGeometry,
): { below: PlateSplit; above: PlateSplit; width: number } {
  const h = chamber.reverse!.height;
  const inside = geometry.roof - geometry.floor;
  const middle = geometry.floor + h;
  let sectionShare: number;
  let wallShare: number;
  let width: number;
  if (chamber.shape === 'round') {
    const r = 0.5 * inside;
    const angle = 2 * Math.acos(Math.min(1, Math.max(-1, (r - h) / r)));
    sectionShare = (angle - Math.sin(angle)) / (2 * Math.PI);
    wallShare = angle / (2 * Math.PI);
    width = 2 * r * Math.sin(0.5 * angle);
  } else {
    sectionShare = h / inside;
    wallShare = sectionShare;
    width = geometry.section / inside;
  }
  const share = (face: Face): number => {
    if (face.place !== 'along') return sectionShare;
    if (face.orientation === 'down') return 1;
    if (face.orientation === 'up') return 0;
    return wallShare;
  };
  return {
    below: { section: geometry.section * sectionShare, floor: geometry.floor, roof: middle, share },
    above: {
      section: geometry.section * (1 - sectionShare),
      floor: middle,
      roof: geometry.roof,
      share: (face) => 1 - share(face),
    },
    width,
  };
}
