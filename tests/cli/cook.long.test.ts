import { readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { expectFiles } from './cookFiles.js';
import { eachScratch, example, expectRefusal, pitwright } from './support/run.js';

const folder = eachScratch();

const market = example('reverse-flow.yaml');

describe('cook', () => {
  it('prints its text and says nothing else', async () => {
    const { code, stdout, stderr } = await pitwright(['cook', market]);
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
    expect(stdout).toMatch(/The day takes/);
  });

  it('gives JSON, CSV and a picture', async () => {
    const args = ['cook', market, '--json', '--csv', folder.at('day.csv'), '--charts', folder.at('charts')];
    const { code, stdout } = await pitwright(args);
    expect(code).toBe(0);
    const { cook } = JSON.parse(stdout);
    expect(cook.energyError).toBeLessThan(1e-3);
    expect(cook.inBand_share).toBeGreaterThan(0.5);
    expect(expectFiles(folder)).toBe(cook.curve.time_s.length);
  });

  it('tells what the reader chose, and what is left of the wood', async () => {
    const text = readFileSync(market, 'utf8');
    const pipe = text.replace(/(chamber:[^]*?)diameter: [^\n#]*/, '$1diameter: 30 in pipe, extra strong ');
    writeFileSync(folder.at('pit.yaml'), pipe);
    const { code, stdout, stderr } = await pitwright(['cook', folder.at('pit.yaml'), '--json']);
    expect(code).toBe(0);
    expect(stderr).toMatch(/^pitwright: chamber\.plate: /m);
    const { cook, warnings } = JSON.parse(stdout);
    expect(warnings).toMatchObject([{ code: 'wall-not-of-pipe', where: 'chamber.plate' }]);
    expect(cook.left_kg).toBeGreaterThan(0);
    expect(cook.left_kg).toBeLessThan(cook.woodTending_kg);
  });
});

describe('cold-smoke', () => {
  const upright = example('offset-with-upright.yaml');

  it('takes another ceiling and another least fire', async () => {
    const { stdout } = await pitwright([
      'cold-smoke',
      upright,
      '--ceiling',
      '120 °F',
      '--least',
      '1 lb wood/h',
      '--json',
    ]);
    const { coldSmoke } = JSON.parse(stdout);
    expect(coldSmoke.possible).toBe(true);
    expect(coldSmoke.fire.wood_kg_per_s * 3600).toBeCloseTo(0.45359237, 6);
  });

  /** The answer of a day in words, on one line, and as numbers. */
  async function onADayOf(air: string) {
    const words = await pitwright(['cold-smoke', upright, '--air', air]);
    const numbers = await pitwright(['cold-smoke', upright, '--air', air, '--json']);
    expect([words.code, numbers.code]).toEqual([0, 0]);
    const [, answer] = words.stdout.split('\n\n');
    return { answer: answer.replaceAll('\n', ' '), cold: JSON.parse(numbers.stdout).coldSmoke };
  }
  /** 5 °F in hand is what a yes takes, in kelvin. */
  const IN_HAND = 5 / 1.8;
  const degrees = (kelvin: number) => `${(1.8 * kelvin).toPrecision(2)} °F`;
  const fahrenheit = (kelvin: number) => `${(1.8 * kelvin - 459.67).toFixed(0)} °F`;
  const warmest = (stations: { thermometer_K: number }[]) => Math.max(...stations.map((each) => each.thermometer_K));

  it('says whether the pit can, with what vents and fire, and up to what day', async () => {
    const { answer, cold } = await onADayOf('45 °F');
    expect(cold).toMatchObject({ possible: true, why: null, open: 1 });
    expect(cold.inHand_K).toBeGreaterThan(IN_HAND);
    expect(cold.inHand_K).toBeCloseTo(cold.ceiling_K - warmest(cold.stations), 6);
    expect(cold.stations.map(({ under }: { under: boolean }) => under)).toEqual([true, true]);
    expect(cold.largestFire_W).toBeGreaterThan(cold.fire.fire_W);
    const { likely, low, high } = cold.hottestDay_K;
    expect(low).toBeLessThan(likely);
    expect(likely).toBeLessThan(high);
    expect(answer).toMatch(/^Yes: with the intakes 100 % open and a fire of .* of wood, the upright stays /);
    expect(answer).toContain(`stays ${degrees(cold.inHand_K)} (`);
    expect(answer).toContain(' under 90 °F (32 °C) on a day of 45 °F ');
    expect(answer).toMatch(/ Up to .* of wood, keep it there\. /);
    expect(answer).toContain(`The hottest day on which the ceiling is just kept is one of ${fahrenheit(likely)} (`);
    expect(answer).toContain(`(${fahrenheit(low)} (`);
    expect(answer).toContain(` to ${fahrenheit(high)} (`);
  });

  it('says hardly where next to nothing is in hand, and no where the fire or the air is too warm', async () => {
    const hardly = await onADayOf('70 °F');
    expect(hardly.cold).toMatchObject({ possible: false, why: 'nothing-in-hand', largestFire_W: null });
    expect(hardly.cold.inHand_K).toBeGreaterThanOrEqual(0);
    expect(hardly.cold.inHand_K).toBeLessThan(IN_HAND);
    expect(hardly.answer).toMatch(/^Hardly: with the intakes .* stays only .* under 90 °F \(32 °C\) on a day of 70 °F/);

    const warm = await onADayOf('86 °F');
    expect(warm.cold).toMatchObject({ possible: false, why: 'fire-too-warm', largestFire_W: null });
    expect(warm.cold.inHand_K).toBeLessThan(0);
    expect(warm.answer).toMatch(/^No: on a day of 86 °F .* the smallest steady fire already warms the upright /);
    expect(warm.answer).toContain(`the upright ${degrees(-warm.cold.inHand_K)} (`);
    const open = `the intakes ${(100 * warm.cold.open).toFixed(0)} % open`;
    expect(warm.answer).toContain(` over 90 °F (32 °C), with ${open}, where it stays coolest.`);

    const hot = await onADayOf('95 °F');
    expect(hot.cold).toMatchObject({ possible: false, why: 'air-too-warm' });
    expect(hot.answer).toMatch(/^No: on a day of 95 °F .* the air alone is at the ceiling of 90 °F/);
  });

  it.each([
    [['--ceiling', '900 °F'], /out of range; allowed: 40 °F to 200 °F/],
    [['--least', '0 W'], /out of range/],
    [['--air', 'warm'], /does not begin with a number/],
  ])('refuses %s', async (args, message) => {
    await expectRefusal(['cold-smoke', upright, ...args], 2, message);
  });
});
