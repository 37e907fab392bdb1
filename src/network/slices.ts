/** A part cut level: what share of its section, shell and ends lies in each slice of its height. */
import type { Face, PartGeometry } from '../design/geometry.js';

/** A level band of a part. */
export interface Slice {
  /** cross-section [m2] */
  section: number;
  /** heights above the ground [m] */
  floor: number;
  roof: number;
  /** share of a face's area in this slice */
  share(face: Face): number;
}

/**
 * Slices of equal height of a horizontal part between two heights above its inside floor, lowest first.
 *
 * Round: circular segment of height h in the bore, area r^2/2 (w - sin w), arc r w, w the angle it spans. Square:
 * straight proportions; roof and floor belong to the slices that touch them.
 *
 * @param range heights above the inside floor [m]; default: all of it
 */
export function slicesOf(
  geometry: PartGeometry,
  levels: number,
  range: { low: number; high: number } = { low: 0, high: geometry.roof - geometry.floor },
): Slice[] {
  const height = geometry.roof - geometry.floor;
  const each = (range.high - range.low) / levels;
  return Array.from({ length: levels }, (_, j) => {
    const low = range.low + j * each;
    const high = low + each;
    const [under, upTo] = [below(geometry, low / height), below(geometry, high / height)];
    const section = upTo.section - under.section;
    return {
      section: geometry.section * section,
      floor: geometry.floor + low,
      roof: geometry.floor + high,
      share: (face) => {
        if (face.place !== 'along') return section;
        if (face.reach) {
          const wallBelow = (at: number) =>
            below(geometry, Math.min(face.reach!.high, Math.max(face.reach!.low, at))).wall;
          const whole = wallBelow(1) - wallBelow(0);
          return (wallBelow(high / height) - wallBelow(low / height)) / whole;
        }
        if (face.orientation === 'up') return high > height * (1 - 1e-9) ? 1 : 0;
        if (face.orientation === 'down') return low < height * 1e-9 ? 1 : 0;
        return upTo.wall - under.wall;
      },
    };
  });
}

function below(geometry: PartGeometry, share: number): { section: number; wall: number } {
  return shareBelow(isRound(geometry), share);
}

/**
 * Shares of the section and of the shell or sides of a lying cylinder or a box that lie below a share of its height.
 */
export function shareBelow(round: boolean, share: number): { section: number; wall: number } {
  if (!round) return { section: share, wall: share };
  const angle = 2 * Math.acos(Math.min(1, Math.max(-1, 1 - 2 * share)));
  return { section: (angle - Math.sin(angle)) / (2 * Math.PI), wall: angle / (2 * Math.PI) };
}

function isRound(geometry: PartGeometry): boolean {
  return geometry.faces.some(({ orientation }) => orientation === 'horizontalCylinder');
}

/** Width of a horizontal part at a height above its inside floor [m]. */
export function widthAtHeight(geometry: PartGeometry, above: number): number {
  const height = geometry.roof - geometry.floor;
  if (!isRound(geometry)) return geometry.section / height;
  return 2 * Math.sqrt(Math.max(0, above * (height - above)));
}
