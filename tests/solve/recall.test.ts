import { describe, expect, it } from 'vitest';
import { LuSolver } from '../../src/solve/linear.js';
import { Recall } from '../../src/solve/recall.js';
import { StiffStepper } from '../../src/solve/stiff.js';
import { bodySystem } from '../../src/verify/heatBody.js';

const PERIOD = 1800;
const LENGTHS = [20, 40, 140, 200, 400, 500, 500];

/** Radiating steel under a fire that is made up once a period: its last temperature, and what the last period took. */
function swung(recall?: Recall): { temperature: number; turns: number } {
  const fire = (time: number) => 20e3 * Math.exp(-(time % PERIOD) / 900);
  const body = {
    content: (T: number) => 24e3 * T,
    capacity: () => 24e3,
    uptake: (time: number, T: number) => fire(time) - 5.67e-8 * 0.9 * T ** 4,
  };
  const stepper = new StiffStepper(bodySystem(body), new LuSolver(1));
  let turns = 0;
  let temperature = 600;
  for (let period = 0; period < 6; period++) {
    turns = stepper.newtonIterations;
    let time = period * PERIOD;
    recall?.begin(time);
    stepper.begin(time, Float64Array.of(temperature));
    for (const h of LENGTHS) {
      expect(stepper.attempt(time, h, undefined, recall?.like(time, h, 1))).toBeLessThan(Infinity);
      recall?.note(time, h, stepper.surprises);
      stepper.accept(h);
      time += h;
    }
    temperature = stepper.next[0];
  }
  return { temperature, turns: stepper.newtonIterations - turns };
}

describe('what steps of one cycle tell those of the next', () => {
  it('saves a third of the turns and changes nothing else', () => {
    const [alone, told] = [swung(), swung(new Recall())];
    expect(Math.abs(told.temperature - alone.temperature)).toBeLessThan(1e-6);
    expect(told.turns).toBeLessThan((2 / 3) * alone.turns);
  });

  it('is told to a step that begins and ends where one of the last cycle did, of a system as large', () => {
    const recall = new Recall();
    const own = [Float64Array.of(0), Float64Array.of(1)];
    recall.note(0, 10, own);
    recall.begin(100);
    recall.note(105, 10, own);
    expect(recall.like(105, 10, 1)).toBeUndefined();
    recall.begin(200);
    expect(recall.like(205.4, 10.4, 1)).toEqual(own);
    expect(recall.like(206, 10, 1)).toBeUndefined();
    expect(recall.like(205, 11, 1)).toBeUndefined();
    expect(recall.like(205, 10, 2)).toBeUndefined();
    recall.begin(300);
    expect(recall.like(305, 10, 1)).toBeUndefined();
  });
});
