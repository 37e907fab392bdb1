import { beforeAll, describe, expect, it } from 'vitest';
import type { Tree } from '../../../src/design/vary.js';
import { constraintLines } from '../../../src/report/text/sizeCosts.js';
import { sizeText } from '../../../src/report/text/sizeText.js';
import type { EstimateResult } from '../../../src/study/estimate/result.js';
import { LIMIT, limitOf, LIMITS } from '../../../src/study/size/limits.js';
import type { SizeResult } from '../../../src/study/size/size.js';
import { changed } from '../../design/designFiles.js';
import { fedBack, sizesFor } from './asked.js';

const inch = 0.0254;

/** A size under what is asked: a stack 30 to 31 in over the lid within these bounds, of what is on hand. */
export function sizeUnder(stack: string, onHand: string): void {
  describe('a size under what is asked', () => {
    let tree: Tree;
    let result: SizeResult;
    let estimated: EstimateResult;
    // a throat too small, a stack no taller than that, one tube on hand
    beforeAll(async () => {
      const text = changed(['throat: { area: 90 in^2', 'throat: { area: 50 in^2']);
      const size = `size: { keep: [throat], stack: { ${stack} }, onHand: ["${onHand}"] }`;
      ({ tree, result } = await sizesFor(`${text}prices: { steel: $1.20/lb, wood: $0.30/lb }\n${size}\n`));
      ({ estimated } = fedBack(tree, result));
    }, 300_000);

    const cost = (key: string) => result.constraints.find((each) => each.key === key)!;

    it('is one that keeps to it', () => {
      expect(result.chosen).toBe(0);
      for (const { throat, stack, fields } of result.choices) {
        expect(throat.kept).toBe(true);
        expect(fields.throat).toEqual(tree.throat);
        expect(stack.height_m / inch).toBeGreaterThan(39.9);
        expect(stack.height_m / inch).toBeLessThan(41.1);
      }
    });

    it('says which of it costs something, and what would be chosen without', () => {
      expect(result.constraints.map(({ key }) => key)).toEqual(['throat', 'least', 'most', 'onHand']);
      expect(cost('throat').binds).toBe(true);
      expect(cost('throat').without!.throat.kept).toBeUndefined();
      // a larger throat takes less wood
      expect(cost('throat').without!.weighed.wood_kg_per_s!).toBeLessThan(
        0.9 * result.choices[0].weighed.wood_kg_per_s!,
      );
    });

    it('is told in money: its steel, and wood for a full fire until soaked and 8 h of the fire that holds', () => {
      const pound = 0.45359237;
      const [{ money, weighed }] = result.choices;
      expect(money.build).toBeCloseTo((1.2 / pound) * estimated.geometry.totalSteelMass_kg, 9);
      const wood = estimated.warmUp!.woodToSoaked_kg! + 8 * 3600 * weighed.wood_kg_per_s!;
      expect(money.cook).toBeCloseTo((0.3 / pound) * wood, 9);
      // plate stays where no throat is cut, and the smaller throat burns more wood
      const { without, payback } = cost('throat');
      expect(payback!.extra).toBeCloseTo(money.build! - without!.money.build!, 9);
      expect(payback!.extra).toBeGreaterThan(0);
      expect(payback!.saved).toBeCloseTo(without!.money.cook! - money.cook!, 9);
      expect(payback).toMatchObject({ cooks: null, usedUp: null });
      const words = constraintLines(result, () => 'another', 'shop').find((line) =>
        line.startsWith('Keeping the throat'),
      )!;
      const [build, cook] = [payback!.extra.toFixed(0), (-payback!.saved).toFixed(2)];
      expect(words).toContain(
        `in money: $${build} more to build and $${cook} more for the wood of a cook (8 h), never paid back`,
      );
      // against the drawing: a taller stack, and wood that differs by less than can be told
      const drawn = result.asDrawn.money;
      expect(Math.abs(drawn.cook! - money.cook!)).toBeLessThan(0.01 * drawn.cook!);
      expect(sizeText(result, 'shop').replace(/\s+/g, ' ')).toContain(
        `in money: $${(money.build! - drawn.build!).toFixed(0)} more to build and as much for the wood of a cook (8 h)`,
      );
    });

    it('says nothing of money where the design has no prices', () => {
      const bare = { ...result, design: { ...result.design, prices: undefined } };
      const none = { build: null, cook: null };
      const free = {
        ...bare,
        choices: result.choices.map((each) => ({ ...each, money: none })),
        asDrawn: { ...result.asDrawn, money: none },
        payback: null,
        constraints: result.constraints.map((each) => ({
          ...each,
          payback: null,
          without: each.without && { ...each.without, money: none },
        })),
      };
      expect(sizeText(free, 'shop')).not.toMatch(/in money|\$/);
    });

    it('estimated as it is written it has none of the warnings that it counts as kept, and no draft below zero', () => {
      const { margins } = result.choices[0];
      expect(estimated.warnings.filter(({ code }) => !LIMIT[limitOf(code)].told)).toEqual([]);
      for (const { warnings, key, told } of LIMITS) {
        const has = estimated.warnings.some(({ code }) => warnings?.includes(code));
        if (told) expect(margins.find((each) => each.key === key)!.margin < 0).toBe(has);
      }
      expect(Math.min(estimated.assumed!.draft.stackBase_Pa, estimated.steady!.draft.stackBase_Pa)).toBeGreaterThan(0);
    });
  });
}
