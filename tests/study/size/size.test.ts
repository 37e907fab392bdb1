import { beforeAll, describe, expect, it } from 'vitest';
import { readDesign } from '../../../src/design/read.js';
import { estimate } from '../../../src/study/estimate/estimate.js';
import { candidateFields, treeWith } from '../../../src/study/size/candidate.js';
import { whereClean, withOpening } from '../../../src/study/air/cleanHold.js';
import { judgeFully, type FullJudgement } from '../../../src/study/size/judge.js';
import { COMFORT, LIMITS, marginOf } from '../../../src/study/size/limits.js';
import { bestOf, stackTries, surveyStack, type Rough } from '../../../src/study/size/search.js';
import { ventsThatFit } from '../../../src/study/size/vents.js';
import { writeOut } from '../../../src/study/size/size.js';
import { fullFire, justLit } from '../../../src/study/air/states.js';
import { stockHeights, stockStacks, stockThroat, stockVents } from '../../../src/study/size/stock.js';
import { weathersOf } from '../../../src/study/size/weather.js';
import { parseQuantity } from '../../../src/units/index.js';
import { changed, designOf, PLAIN } from '../../design/designFiles.js';
import { treeOf } from './asked.js';

const settings = { cleanAir: 2.5 };
const plain = designOf(PLAIN);

const inch = 0.0254;
const square = inch ** 2;

describe('limits and margins', () => {
  it('a margin is the share of the limit in hand, of the nearer end of a band', () => {
    expect(marginOf('air', 3).margin).toBeCloseTo(1, 12);
    expect(marginOf('air', 0.75).margin).toBeCloseTo(-0.5, 12);
    expect(marginOf('holdOpening', 0.3).margin).toBeCloseTo(1, 12);
    expect(marginOf('holdOpening', 0.56).margin).toBeCloseTo(0.25, 12);
    expect(marginOf('holdOpening', 0.1).margin).toBeLessThan(0);
    expect(marginOf('throatSpeed', 2.4).margin).toBeCloseTo(-0.5, 12);
    expect(marginOf('smoke', 0.0025).margin).toBeCloseTo(0.75, 12);
    expect([marginOf('backDraft', 0).margin, marginOf('backDraft', 1).margin]).toEqual([1, -1]);
  });

  it('a flow that runs backwards is outside every band', () => {
    expect(marginOf('stackSpeed', -1).margin).toBeLessThan(0);
    expect(marginOf('intakeSpeed', -1).margin).toBeLessThan(0);
  });

  it('each says where it comes from', () => {
    for (const { source } of LIMITS) expect(source).toMatch(/common practice, no source|estimate|follows|physics/);
  });
});

describe('the shelf', () => {
  it('every stack is written as the reader takes it, and reads as its own size', () => {
    for (const { written, section } of stockStacks('carbon', ['round', 'square'])) {
      const read = parseQuantity('length', written.diameter ?? written.width);
      expect(read).toMatchObject({ ok: true, si: section.diameter ?? section.width });
      if (written.wall) expect(parseQuantity('plate', written.wall)).toMatchObject({ ok: true, si: section.wall });
      else expect(read).toMatchObject({ pipe: { wall: section.wall } });
    }
  });

  it('stacks are cut in half feet between their bounds, to a bound that is asked for, and no longer than the piece', () => {
    const cut = (least: number, most: number, long?: number) =>
      stockHeights({ least: least * inch, most: most * inch }, long && long * inch).map(({ text }) => text);
    expect(cut(20, 37)).toEqual(['20 in', '24 in', '30 in', '36 in', '37 in']);
    expect(cut(24, 60, 31.7)).toEqual(['24 in', '30 in', '31-1/2 in']);
    expect(cut(40, 30)).toEqual([]);
    expect(cut(60, Infinity)).toEqual(['60 in', '66 in', '72 in', '84 in']);
  });

  it('vents stand side by side on the face and under its edge', () => {
    for (const { count, diameter, width } of stockVents({ width: 0.4, height: 0.2 })) {
      expect(count * (diameter ?? width)!.value).toBeLessThan(0.4);
      expect(diameter?.value ?? 0).toBeLessThan(0.2);
    }
    expect(ventsThatFit(plain).length).toBeGreaterThan(10);
  });

  it('throats come in whole tens of square inches, never smaller than asked', () => {
    expect(stockThroat(81 * square)).toMatchObject({ text: '90 in^2' });
    expect(stockThroat(80 * square)).toMatchObject({ text: '80 in^2' });
    expect(stockThroat(0).text).toBe('10 in^2');
  });
});

describe('how the air follows the size', () => {
  const withStack = (diameter: string, height: string) =>
    fullFire(designOf(changed(['diameter: 6 in, height: 36 in', `diameter: ${diameter}, height: ${height}`])))!;

  it('a taller and a wider stack draw more', () => {
    const drafts = ['24 in', '36 in', '60 in'].map((height) => withStack('6 in', height).state);
    expect(drafts[1].stackBase_Pa).toBeGreaterThan(drafts[0].stackBase_Pa);
    expect(drafts[2].stackBase_Pa).toBeGreaterThan(drafts[1].stackBase_Pa);
    const airs = ['4 in', '6 in', '8 in'].map((diameter) => withStack(diameter, '36 in').state.air_kg_per_s);
    expect(airs[1]).toBeGreaterThan(airs[0]);
    expect(airs[2]).toBeGreaterThan(airs[1]);
  });

  it('a narrow stack over cold steel lets smoke out of the doors, a wide one does not', () => {
    expect(justLit(withStack('4 in', '36 in'), 0.3)!.smokeShare).toBeGreaterThan(0.02);
    expect(justLit(withStack('8 in', '36 in'), 0.3)!.smokeShare).toBeLessThan(0.001);
  });

  it('the fire that holds is found where it gets the air that was asked for', () => {
    for (const cleanAir of [2, 3.5]) {
      const clean = whereClean((open) => withOpening(plain, open), { low: 0.01, high: 1, guess: 0.3 }, { cleanAir });
      expect(clean!.hold.state.excessAirRatio / cleanAir).toBeCloseTo(1, 1);
      expect(clean!.hold.state.reading_K).toBeCloseTo(plain.fire.target, 4);
    }
  });

  it('finds none where the vents are too small for it', () => {
    const small = designOf(changed(['diameter: 4 in', 'diameter: 1 in']));
    expect(whereClean((open) => withOpening(small, open), { low: 0.01, high: 1, guess: 0.3 }, settings)).toBeNull();
  });
});

describe('a choice', () => {
  // a chamber as tight as a good door: through a leaky one so much air comes that hardly a vent holds with a quarter in
  // hand
  const text = PLAIN.replace('doorGap: 2.0 in^2', 'doorGap: 0.5 in^2');
  const tight = designOf(text);
  const tree = treeOf(text);
  let best: Rough[];
  let judged: FullJudgement;
  let fields: ReturnType<typeof candidateFields>;

  beforeAll(async () => {
    const tries = stackTries(tight).filter(({ stack, height }) => /^5 in/.test(stack.name) && height!.value < 1.3);
    const surveys = tries.map((each) => surveyStack(tight, each, settings));
    best = bestOf(surveys, 4);
    const { written } = await writeOut(tree, tight, { tries: tries.map((each) => ({ of: 0, ...each })), surveys });
    const [first] = written;
    judged = judgeFully(first.design, first.guess, settings);
    fields = candidateFields(tree, first.candidate, 1);
  });

  const value = (key: string) => judged.margins.find((each) => each.key === key)!.value;

  it('keeps within every limit with a quarter in hand', () => {
    expect(judged.failed).toEqual([]);
    expect(judged.score).toBeGreaterThan(COMFORT);
    expect(judged.weather).toHaveLength(4);
  });

  it('is roughly judged as it is fully judged', () => {
    expect(best[0].score).toBeCloseTo(judged.score, 1);
  });

  it('put into the design file and estimated gives the margins that were printed', () => {
    const written = readDesign(JSON.stringify(treeWith(tree, fields)), { fileName: 'pit.yaml' });
    const full = estimate(written.design!, { steadyOnly: true }).assumed!;
    expect(full.letInRatio).toBeCloseTo(value('air'), 6);
    expect(full.draft.stackVelocity_m_per_s).toBeCloseTo(value('stackSpeed'), 6);
    expect(full.draft.intakeVelocity_m_per_s).toBeCloseTo(value('intakeSpeed'), 6);

    const [intake] = fields.firebox.intakes;
    const closed = { ...fields, firebox: { intakes: [{ ...intake, open: `${100 * judged.holdOpening!} %` }] } };
    const throttled = readDesign(JSON.stringify(treeWith(tree, closed)), { fileName: 'pit.yaml' });
    const held = estimate(throttled.design!, { steadyOnly: true }).steady!;
    expect(held.draft.stackVelocity_m_per_s).toBeCloseTo(value('holdStackSpeed'), 6);
    expect(held.excessAirRatio / settings.cleanAir).toBeCloseTo(1, 1);
  });

  it('keeps the rest of the file as it is written', () => {
    expect(fields.throat).toMatchObject({ centre: '34 in' });
    expect(fields.stacks).toHaveLength(1);
    expect(fields.stacks[0]).toMatchObject({ part: 'chamber', base: '42 in' });
    expect(fields.firebox.intakes).toMatchObject([{ centre: '26 in', open: '100 %' }]);
  });
});

describe('what cannot be', () => {
  it('a fire too small for its target is told as that', () => {
    const weak = designOf(changed(['70,000 BTU/h', '9,000 BTU/h']));
    const surveys = stackTries(weak)
      .filter(({ stack }) => /^6 in tube/.test(stack.name))
      .map((each) => surveyStack(weak, each, settings));
    expect(surveys.every(({ ruledOut }) => ruledOut === 'heat')).toBe(true);
  });

  it('other weather is other air, wind and pressure; all else stays', () => {
    for (const { site } of weathersOf(plain)) expect(site.altitude).toBe(plain.site.altitude);
    const [cold, , , hot] = weathersOf(plain);
    expect(cold.site.air).toBeLessThan(plain.site.air);
    expect(cold.site.surroundings).toBe(cold.site.air);
    expect(hot.site).toMatchObject({ wind: 0 });
  });
});
