import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { overlap, sectionArea, widthAt, type Section } from '../../src/design/overlap.js';

const round = (diameter: number, centre: number): Section => ({
  shape: 'round',
  width: diameter,
  height: diameter,
  centre,
});
const square = (width: number, height: number, centre: number): Section => ({ shape: 'square', width, height, centre });

/** Lens of two circles: r2 acos((d2+r2-R2)/2dr) + R2 acos((d2+R2-r2)/2dR) - half the root of the kite's product. */
function lens(r: number, R: number, d: number): number {
  const kite = (-d + r + R) * (d + r - R) * (d - r + R) * (d + r + R);
  return (
    r * r * Math.acos((d * d + r * r - R * R) / (2 * d * r)) +
    R * R * Math.acos((d * d + R * R - r * r) / (2 * d * R)) -
    Math.sqrt(kite) / 2
  );
}

describe('overlap of two sections', () => {
  it('is the lens of two circles (derived: closed form of plane geometry)', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.08, max: 0.9, noNaN: true }),
        fc.double({ min: 0.08, max: 0.9, noNaN: true }),
        fc.double({ min: 0.02, max: 0.98, noNaN: true }),
        (r, R, share) => {
          const d = Math.abs(R - r) + share * (r + R - Math.abs(R - r));
          const found = overlap(round(2 * r, 1), round(2 * R, 1 + d));
          expect(Math.abs(found.area / lens(r, R, d) - 1)).toBeLessThan(2e-5);
        },
      ),
      { seed: 21, numRuns: 300 },
    );
  });

  it('of two 24 in rounds set 10 in apart is 219.4 in2, its middle half way', () => {
    // derived: 2 r2 acos(d/2r) - d/2 sqrt(4 r2 - d2), r 12, d 10: 328.62 - 109.09
    const found = overlap(round(24, 30), round(24, 40));
    expect(found.area).toBeCloseTo(219.53, 1);
    expect(found.centre).toBeCloseTo(35, 6);
    expect([found.low, found.high]).toEqual([28, 42]);
  });

  it('of two boxes is a rectangle', () => {
    const found = overlap(square(3, 2, 1), square(2, 4, 2.5));
    expect(found.area).toBeCloseTo(2 * 1.5, 4);
    expect(found.centre).toBeCloseTo(1.25, 9);
  });

  it('of a section inside another is the section', () => {
    expect(overlap(round(1, 5), square(4, 4, 5)).area).toBeCloseTo(Math.PI / 4, 5);
    expect(overlap(round(1, 5), round(4, 5)).area).toBeCloseTo(Math.PI / 4, 5);
  });

  it('does not mind the order, and is never more than either', () => {
    const section = fc.record({
      shape: fc.constantFrom('round' as const, 'square' as const),
      width: fc.double({ min: 0.1, max: 2, noNaN: true }),
      height: fc.double({ min: 0.1, max: 2, noNaN: true }),
      centre: fc.double({ min: 0, max: 2, noNaN: true }),
    });
    fc.assert(
      fc.property(section, section, (a, b) => {
        const [ab, ba] = [overlap(a, b), overlap(b, a)];
        expect(ab).toEqual(ba);
        expect(ab.area).toBeLessThanOrEqual(Math.min(sectionArea(a), sectionArea(b)) * (1 + 1e-5));
        if (ab.area > 0) expect(ab.centre >= ab.low && ab.centre <= ab.high).toBe(true);
      }),
      { seed: 22 },
    );
  });

  it('is nothing where they do not meet', () => {
    expect(overlap(round(1, 1), round(1, 3)).area).toBe(0);
    expect(widthAt(round(1, 1), 2)).toBe(0);
  });
});
