import { describe, expect, it } from 'vitest';
import { estimateText } from '../../src/report/text/estimateText.js';
import type { Design } from '../../src/design/design.js';
import { estimate } from '../../src/study/estimate/estimate.js';
import type { EstimateResult } from '../../src/study/estimate/result.js';
import { exampleDesign } from '../support/examples.js';
import { sampleDesign, sampleResult } from '../support/sampleResult.js';

const text = estimateText(sampleResult, 'shop', { full: true });
const short = estimateText(sampleResult, 'shop');

/** The line of a text that holds the words. */
function line(of: string, words: string): string {
  const found = of.split('\n').find((each) => each.includes(words));
  if (found === undefined) throw new Error(`no line holds '${words}'`);
  return found;
}

describe('the text of an estimate', () => {
  it('answers in its first sentences: both times, the fire that holds, the draft', () => {
    const opening = text.slice(0, text.indexOf('WARNINGS'));
    for (const words of ['250 °F', '13 min at the', '29 min', '5.04 lb/h', '31,900 BTU/h', '0.0035 in H2O']) {
      expect(opening.replace(/\s+/g, ' ')).toContain(words);
    }
    // in one system of units
    expect(opening).not.toMatch(/°C|kW|Pa\b|kg/);
    expect(short.slice(0, opening.length)).toBe(opening);
  });

  it('calls gauge time a lower bound', () => {
    expect(line(text, 'first reads 250 °F (121 °C)  ')).toContain('at least 13 min');
    expect(text).toContain('lower bound');
  });

  it('shows each station under both fires, gauge marked', () => {
    expect(line(text, 'middle (gauge)')).toMatch(
      /314 °F \(157 °C\) +250 °F \(121 °C\) +148 °F \(64 °C\) +155 °F \(68 °C\)/,
    );
    expect(text.match(/^ {2}firebox +\d+ °F/gm)).toHaveLength(2);
  });

  it('splits the heat so that the shares are of the total', () => {
    expect(line(text, 'firebox walls')).toMatch(/13,400 BTU\/h \(3\.94 kW\) +42 %/);
    expect(line(text, '  total')).toMatch(/31,900 BTU\/h \(9\.35 kW\) +100 %/);
  });

  it('says which gaps leak smoke and which draw air', () => {
    expect(line(text, 'chamber door gap, upper, middle  ')).toContain('leaks smoke');
    expect(line(text, 'firebox door gap, lower')).toContain('draws air');
  });

  it('calls no flow past plates backwards: gas goes round behind a deflector, and back over a reverse-flow plate', () => {
    const passages = (design: Design) =>
      estimateText(estimate(design, { steadyOnly: true }), 'shop', { full: true })
        .split('\n')
        .filter((each) => / (passage \d|deflector) /.test(each));
    const plate = 'doorGap: 2.0 in^2\n  deflector: { height: 7 in, plate: 1/4 in, length: 14 in }';
    const deflected = passages(exampleDesign('plain-24.yaml', (own) => own.replace('doorGap: 2.0 in^2', plate)));
    expect(deflected[0]).toContain('net to the fire');
    expect(deflected[1]).toContain('from the fire');
    expect(deflected[2]).toContain('up');
    const reverse = passages(exampleDesign('reverse-flow.yaml'));
    expect(reverse[0]).toMatch(/plenum passage 1 .*from the fire/);
    expect(reverse[2]).toMatch(/chamber passage 1 .*to the fire/);
    expect([...deflected, ...reverse].join()).not.toContain('BACKWARDS');
  });

  it('still calls out what flows the wrong way through a throat', () => {
    const state = sampleResult.steady!;
    const openings = state.openings.map((each) => (each.role === 'throat' ? { ...each, flow_kg_per_s: -0.01 } : each));
    const turned = estimateText({ ...sampleResult, steady: { ...state, openings } }, 'shop', { full: true });
    expect(line(turned, '  throat  ')).toContain('BACKWARDS');
  });

  it('says that thickness hardly changes the loss, that it is no guarantee, and the cautions once', () => {
    expect(text).toContain('Plate thickness hardly changes this loss');
    expect(text.match(/not a guarantee/g)).toHaveLength(1);
    expect(text.match(/carbon monoxide/g)).toHaveLength(1);
  });

  it('prints the imbalance and the estimates with their spread', () => {
    expect(text.replace(/\s+/g, ' ')).toContain('within 0.0004 % of the fire');
    expect(line(text, 'fire.radiant')).toMatch(/0\.3 +0\.2 to 0\.45/);
  });

  it('fits 100 columns', () => {
    expect(Math.max(...text.split('\n').map((each) => each.length))).toBeLessThanOrEqual(100);
  });

  it('says of too few cases that they tell no causes, and once what some of them lack', () => {
    const number = (key: string) => ({ key, estimate: 900, p10: 800, p50: 900, p90: 1000, missing: 3, causes: [] });
    const spread = {
      cases: 40,
      seed: 1,
      numbers: ['gauge_s', 'soaked_s'].map(number),
    } as unknown as EstimateResult['spread'];
    const few = estimateText({ ...sampleResult, spread }, 'shop').replace(/\s+/g, ' ');
    expect(few).toContain("Missing in 3 of 40 cases: 'thermometer first reads the target' and 'soaked'.");
    expect(few).toContain('Too few cases to tell: ask for more of them. WARNINGS');
  });

  it('keeps to SI when asked', () => {
    const si = estimateText(sampleResult, 'si', { full: true });
    expect(si).not.toMatch(/°F|BTU|\blb\b|in H2O/);
    expect(line(si, 'middle (gauge)')).toMatch(/157 °C +121 °C +64 °C +68 °C/);
  });
});

describe('the short text of an estimate', () => {
  const heads = (of: string) => of.match(/^[A-Z]{2,}[A-Z ]*/gm)!.map((head) => head.trim());

  it('keeps temperatures, heat and air, and leaves the rest to the full one', () => {
    expect(heads(short)).toEqual(['WARNINGS', 'TEMPERATURES', 'WHERE THE HEAT GOES', 'AIR AND DRAFT']);
    expect(heads(text)).toEqual(
      expect.arrayContaining([...heads(short), 'WARM', 'OPENINGS', 'WEIGHTS', 'ESTIMATES USED']),
    );
    expect(short.split('\n').length).toBeLessThan(60);
  });

  it('shows both fires in one table of temperatures, gauge marked', () => {
    expect(line(short, 'middle (gauge)')).toMatch(/314 °F \(157 °C\) +250 °F \(121 °C\) +148 °F \(64 °C\) +\d+ °F/);
    expect(short.match(/^ {2}firebox +\d+ °F/gm)).toHaveLength(1);
  });

  it('keeps to SI when asked, and says the cautions once', () => {
    expect(estimateText(sampleResult, 'si')).not.toMatch(/°F|BTU|\blb\b|in H2O/);
    expect(short.match(/not a guarantee/g)).toHaveLength(1);
    expect(short.match(/carbon monoxide/g)).toHaveLength(1);
  });
});

describe('the text where something does not exist', () => {
  const { steady, assumed, warmUp } = sampleResult;
  if (!steady || !assumed || !warmUp) throw new Error('the sample has all');

  it('says that the target is never reached, and what is', () => {
    const { design } = sampleResult;
    const never: EstimateResult = {
      ...sampleResult,
      design: { ...design, fire: { ...design.fire, target: 505.372 } },
      warmUp: { ...warmUp, gauge_s: null, soaked_s: null },
    };
    const said = estimateText(never, 'shop', { full: true });
    expect(said.replace(/\s+/g, ' ')).toContain('never reads 450 °F: it settles at 439 °F');
    expect(line(said, 'soaked')).toContain('never');
  });

  it('says that a pit without any burning state cannot burn', () => {
    const dead: EstimateResult = { ...sampleResult, steady: null, assumed: null, warmUp: null };
    const said = estimateText(dead, 'shop');
    expect(said).toContain("can't burn");
    expect(said).toContain('No fire holds 250 °F');
    expect(said).not.toMatch(/NaN|undefined|null/);
  });

  it('shows an opening that flows the wrong way', () => {
    const openings = steady.openings.map((each) => (each.name === 'throat' ? { ...each, flow_kg_per_s: -0.01 } : each));
    const said = estimateText({ ...sampleResult, steady: { ...steady, openings } }, 'shop', { full: true });
    expect(line(said, '  throat')).toContain('BACKWARDS');
  });

  it('lets no control character of a name through', () => {
    const name = 'Pit\u001b[31m red\u202e\nsecond line';
    const said = estimateText({ ...sampleResult, design: { ...sampleDesign, name } }, 'shop');
    expect(said).not.toMatch(/[\u001b\u202e]/);
    expect(said.split('\n')[0]).toContain('Pit [31m red second line');
  });
});
