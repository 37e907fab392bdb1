import { describe, expect, it } from 'vitest';
import type { Design } from '../../../src/design/design.js';
import { BED_RELEASE } from '../../../src/design/bed.js';
import { withFullFire } from '../../../src/study/air/burnsItsAir.js';
import { cooked } from '../../../src/study/events/cooked.js';
import { cleanVents } from '../../../src/study/air/cleanHold.js';
import { estimate } from '../../../src/study/estimate/estimate.js';
import { exampleDesign } from '../../support/examples.js';

/** The plain pit without a fire of its own. */
const unfired = (change?: (design: Design) => void): Design => {
  const design = exampleDesign('plain-24.yaml', (text) => text.replace(/ +heat: 70,000.*\n/, ''));
  change?.(design);
  return design;
};

describe('the full fire of a box', () => {
  it('is what the vents as drawn let burn clean, or what its bed makes, whichever is less', () => {
    const { fire } = withFullFire(unfired());
    expect(fire.heatOf).toBe('air');
    const { assumed } = estimate(unfired());
    expect(assumed!.fire_W).toBeCloseTo(fire.heat, 3);
    expect(assumed!.letInRatio).toBeCloseTo(2.5, 2);
    const small = withFullFire(
      unfired((d) => {
        d.fire.bed = 0.02;
        d.fire.heat = 0.02 * BED_RELEASE.likely;
      }),
    );
    expect(small.fire).toMatchObject({ heatOf: 'bed', heat: 5000 });
  });

  it('is never smaller on twice the grate, nor with the intakes further open', () => {
    const withBed = (bed: number) =>
      withFullFire(
        unfired((d) => {
          d.fire.bed = bed;
          d.fire.heat = bed * BED_RELEASE.likely;
        }),
      ).fire.heat;
    const byBed = [0.02, 0.04, 0.08, 0.16, 0.32].map(withBed);
    expect(byBed).toEqual([...byBed].sort((a, b) => a - b));
    const byVents = [0.2, 0.5, 1].map(
      (open) => withFullFire(unfired((d) => void (d.firebox.intakes[0].open = open))).fire.heat,
    );
    expect(byVents[0]).toBeLessThan(byVents[1]);
    expect(byVents[1]).toBeLessThan(byVents[2]);
  });

  it('of vents that set it is no limit where they are opened further', () => {
    const design = unfired((d) => void (d.firebox.intakes[0].open = 0.2));
    const { ventCurve, assumed } = estimate(design, { further: (solution) => cooked(solution, true) });
    const at = (open: number) => ventCurve!.fire_W[ventCurve!.open.indexOf(open)]!;
    expect(at(0.2) / assumed!.fire_W).toBeCloseTo(1, 3);
    expect(at(0.4)).toBeGreaterThan(1.3 * at(0.2));
    expect(at(1)).toBeGreaterThan(at(0.6));
  });

  it('that is given stays as given, and beyond any bed is warned of', () => {
    const given = exampleDesign('plain-24.yaml');
    expect(withFullFire(given)).toBe(given);
    const codes = (heat: number) => {
      const design = exampleDesign('plain-24.yaml');
      design.fire.heat = heat;
      return estimate(design, { steadyOnly: true }).warnings.map(({ code }) => code);
    };
    expect(codes(20_000)).not.toContain('fire-beyond-bed');
    expect(codes(120_000)).toContain('fire-beyond-bed');
  });
});

describe('the vents of a clean fire', () => {
  it('hold the target on less wood than wide open ones, at the air that clean flames want', () => {
    const design = exampleDesign('plain-24.yaml');
    const vents = cleanVents(design)!;
    expect(vents.drawn).toBe(1);
    expect(vents.open).toBeLessThan(0.5);
    expect(vents.fire_W).toBeLessThan(estimate(design, { steadyOnly: true }).steady!.fire_W);
    const turned = {
      ...design,
      firebox: { ...design.firebox, intakes: design.firebox.intakes.map((each) => ({ ...each, open: vents.open })) },
    };
    const { steady } = estimate(turned, { steadyOnly: true });
    expect(Math.abs(steady!.excessAirRatio / 2.5 - 1)).toBeLessThan(0.02);
    expect(Math.abs(steady!.fire_W / vents.fire_W - 1)).toBeLessThan(0.005);
  });
});
