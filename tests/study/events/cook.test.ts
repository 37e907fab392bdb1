import { describe, expect, it } from 'vitest';
import type { Design } from '../../../src/design/design.js';
import { coldSmoke, USUAL_CEILING } from '../../../src/study/events/coldSmoke.js';
import { followCook } from '../../../src/study/events/cook.js';
import { timeWithin } from '../../../src/study/events/timeWithin.js';
import { solveUnderFire } from '../../../src/study/estimate/steady.js';
import { withOpening } from '../../../src/study/air/cleanHold.js';
import { makePit } from '../../../src/network/pit.js';
import { geometryOf } from '../../../src/design/geometryOf.js';
import { exampleDesign } from '../../support/examples.js';
import { COOK, expectBurntDown, upright, withCook } from './cooked.js';

describe('a cook', () => {
  const day = followCook(withCook(COOK))!;

  it('runs through the day in order', () => {
    expect(day.marks.map(({ what }) => what)).toEqual(['reads the target', 'loaded', 'last wood']);
    expect(day.reached_s).toBeLessThan(day.loaded_s);
    expect(day.lastWood_s - day.loaded_s).toBeCloseTo(4 * 3600, 3);
    expect(day.end_s - day.lastWood_s).toBeCloseTo(3600, 3);
  });

  it('lays on the wood and coals that its curve of the fire adds up to, and what is left', () => {
    const { heat } = withCook(COOK).wood;
    const coals = day.coals_kg * 30e6;
    expect(Math.abs((heatOf(day) + day.left_kg * heat) / (day.wood_kg * heat + coals) - 1)).toBeLessThan(0.01);
    expect(day.woodError).toBeLessThan(1e-9);
    expect(day.woodToReach_kg + day.woodTending_kg).toBeCloseTo(day.wood_kg, 10);
    expect(day.splits * day.split_kg).toBeCloseTo(day.wood_kg, 10);
  });

  it.each([['as usual', {}]])('burns down after the last wood, and no heat is lost: %s', (_, splits) =>
    expectBurntDown(splits),
  );

  it('takes more wood the more cold food it is given', () => {
    const more = followCook(withCook(COOK.replace('14 lb, area: 2.5 ft^2', '60 lb, area: 12 ft^2')))!;
    const none = followCook(withCook(COOK.replace(/ {2}load.*\n/, '')))!;
    expect(more.wood_kg).toBeGreaterThan(day.wood_kg);
    expect(day.wood_kg).toBeGreaterThanOrEqual(none.wood_kg);
    expect(none.food).toEqual([]);
    // before the next split: after it the cook's own timing hides what the food takes, by a degree either way
    expect(more.loaded_s).toBeCloseTo(day.loaded_s, 3);
    const soon = [more, day].map(({ curve, loaded_s }) =>
      Math.min(...curve.thermometer_K.filter((_, i) => curve.time_s[i] > loaded_s && curve.time_s[i] < loaded_s + 600)),
    );
    expect(soon[0]).toBeLessThan(soon[1]);
  });

  it('keeps what stays wet far below the gas and below boiling', () => {
    const [brisket] = day.food;
    expect(brisket.wet_K).toBeGreaterThan(brisket.start_K + 20);
    expect(brisket.wet_K).toBeLessThan(373);
    expect(brisket.wet_K).toBeLessThan(withCook(COOK).fire.target - 30);
  });

  it('dips once a door more, and is tended through weather', () => {
    const eventful = followCook(
      withCook(
        `${COOK}  events: [{ at: 1 h, lasts: 3 min, door: true }, { at: 90 min, lasts: 2 min, fireboxDoor: true }, { at: 2 h, lasts: 20 min, wind: 20 mph }]\n`,
      ),
    )!;
    const { time_s: time, thermometer_K: reading } = eventful.curve;
    const lowestIn = (from: number, to: number) =>
      Math.min(...reading.filter((_, i) => time[i] >= from && time[i] <= to));
    const { loaded_s, loaded_s: loaded } = eventful;
    const { target } = withCook(COOK).fire;
    expect(lowestIn(loaded + 3600, loaded + 3700)).toBeLessThan(target - 5);
    expect(lowestIn(loaded_s + 7200, loaded_s + 10_000)).toBeGreaterThan(target - 25);
    expect(eventful.wood_kg).toBeGreaterThanOrEqual(day.wood_kg);
  });

  it('closes its heat and air', () => {
    expect(day.energyError).toBeLessThan(1e-3);
    expect(day.massError_kg_per_s).toBeLessThan(1e-9);
    const example = followCook(exampleDesign('reverse-flow.yaml'))!;
    expect(example.energyError).toBeLessThan(1e-3);
    expect(example.inBand_share).toBeGreaterThan(0.5);
  });

  it('is none without a schedule, or with a target that is not reached', () => {
    expect(followCook(exampleDesign('plain-24.yaml'))).toBeNull();
    const weak = withCook(COOK);
    weak.fire.heat = 800;
    expect(followCook(weak)).toBeNull();
  });
});

/** Heat under a day's curve of the fire [J]. */
function heatOf({ curve: { time_s: time, fire_W: fire } }: NonNullable<ReturnType<typeof followCook>>): number {
  let heat = 0;
  for (let i = 1; i < time.length; i++) heat += 0.5 * (fire[i] + fire[i - 1]) * (time[i] - time[i - 1]);
  return heat;
}

describe('time within a band', () => {
  const curve = (thermometer_K: number[]) => ({
    time_s: thermometer_K.map((_, i) => 10 * i),
    thermometer_K,
    fire_W: [],
    gas_K: [],
    steel_K: [],
  });

  it.each([
    ['inside all along', [400, 402], 10],
    ['outside all along', [420, 430], 0],
    ['level and outside', [420, 420], 0],
    // derived: a straight line from 390 to 410 is within 5 of 400 for half of its way
    ['straight through', [390, 410], 5],
    ['down into it', [410, 400], 5],
    ['from a later point on', [0, 400, 400], 10],
  ])('%s', (_, readings, seconds) => {
    const from = readings.length > 2 ? 1 : 0;
    expect(timeWithin(curve(readings as number[]), from, 400, 5)).toBeCloseTo(seconds as number, 9);
  });
});

describe('cold smoke', () => {
  it('is possible on a cool day, with the largest fire that keeps the warmer thermometer at the ceiling', () => {
    const design = upright((d) => void (d.site.air = d.site.surroundings = 283.15));
    const cold = coldSmoke(design);
    expect(cold).toMatchObject({ possible: true, why: null });
    expect(cold.stations.map(({ name }) => name)).toEqual(['uprightLower', 'uprightUpper']);
    expect(cold.inHand_K).toBeCloseTo(
      USUAL_CEILING - Math.max(...cold.stations.map(({ thermometer_K }) => thermometer_K)),
      9,
    );
    const set = withOpening(design, cold.open);
    const pit = makePit(set, geometryOf(set));
    const { x } = solveUnderFire(pit, cold.largestFire_W!);
    pit.balances.evaluate(x, { mode: 'release', heat: cold.largestFire_W! });
    const readings = pit.model.network.stems.flatMap(({ station }, i) =>
      station.startsWith('upright') ? [pit.balances.stems.settled(x, i)] : [],
    );
    expect(Math.max(...readings)).toBeCloseTo(USUAL_CEILING, 1);
  });

  it('takes the stack end where there is no upright', () => {
    expect(coldSmoke(exampleDesign('plain-24.yaml')).stations.map(({ name }) => name)).toEqual(['stackEnd']);
  });

  it('opens intakes that are drawn shut, and says that nothing draws where there are none', () => {
    const shut = (intakes: Design['firebox']['intakes']) =>
      coldSmoke(
        upright((d) => {
          Object.assign(d.firebox, { intakes, doorGap: 0 });
          d.site.air = d.site.surroundings = 283.15;
        }),
      );
    const drawn = upright().firebox.intakes.map((each) => ({ ...each, open: 0 }));
    expect(shut(drawn)).toMatchObject({ possible: true, open: expect.closeTo(1, 9) as number });
    expect(shut([])).toMatchObject({ possible: false, fire: null, inHand_K: null, why: 'no-draft' });
  });
});
