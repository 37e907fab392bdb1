import { describe, expect, it } from 'vitest';
import { platesOf } from '../../../src/design/plates.js';
import type { Design } from '../../../src/design/design.js';
import { compareRows } from '../../../src/report/compareRows.js';
import type { Block } from '../../../src/report/sheets/blocks.js';
import { buyerSheet } from '../../../src/report/sheets/buyerSheet.js';
import { chartScene } from '../../../src/charts/chartScene.js';
import { optionsChart } from '../../../src/charts/optionsChart.js';
import { ofResult, type Found } from '../../../src/study/quantities.js';
import { assemble, type Option } from '../../../src/study/compare/compare.js';
import { turnedOpenings } from '../../../src/study/estimate/otherState.js';
import type { EstimateResult, SteadyState, Warning } from '../../../src/study/estimate/result.js';
import { shortfallOf, type ShortfallCode } from '../../../src/study/estimate/shortfall.js';
import { studyOption, USUAL_SETTINGS, type OptionStudy } from '../../../src/study/compare/studyOption.js';
import { gatherWarnings, gravest, rankOf } from '../../../src/words/warningRank.js';
import { exampleDesign } from '../../support/examples.js';
import { sampleResult } from '../../support/sampleResult.js';
import { compared, quick, checkFirstSaid, checkPrinted } from './checkedComparison.js';

const blocksOf = (blocks: Block[]): Block[] =>
  blocks.flatMap((block) => (block.kind === 'columns' ? block.columns.flatMap(blocksOf) : [block]));

describe('a comparison', () => {
  it('tells of every option which plate each part and door has', () => {
    const [first, ...rest] = [0.003, 0.006, 0.012].map((plate): Design => {
      const { chamber, ...design } = exampleDesign('plain-24.yaml');
      return { ...design, chamber: { ...chamber!, plate, door: { width: 0.7, height: 0.3, plate: 0.005, lap: 0.02 } } };
    });
    const comparison = compared([first, ...rest], quick);
    const rows = compareRows(comparison).filter(({ measure }) => measure.group === 'plate');
    expect(rows.map(({ measure }) => measure.at)).toEqual(platesOf(first).map(({ name }) => name));
    expect(rows.map(({ cells }) => cells.map(({ value }) => value))).toEqual(
      platesOf(first).map((_, i) => comparison.options.map(({ result }) => platesOf(result.design)[i].plate)),
    );
    const sheet = buyerSheet(comparison, 'letter');
    const table = blocksOf(sheet.blocks).find((block) => block.kind === 'table') as Extract<Block, { kind: 'table' }>;
    const plates = table.table.rows.filter(([words]) => words.startsWith('plate of '));
    expect(plates.map(([words]) => words)).toEqual(['plate of chamber']);
    const same = blocksOf(sheet.blocks).find(
      (block): block is Extract<Block, { kind: 'text' }> => block.kind === 'text' && block.text.startsWith('The same'),
    );
    expect(same!.text).toMatch(/plate of firebox 1\/4 in.*plate of chamber door /);
  });
});

describe('options in which gas goes another way than in the baseline', () => {
  const { steady } = sampleResult;
  const turn = (part: string): SteadyState => ({
    ...steady!,
    openings: steady!.openings.map((each) =>
      each.role === part ? { ...each, flow_kg_per_s: -each.flow_kg_per_s } : each,
    ),
  });
  const options = ['one', 'other'].map((label): Option => ({ label, changes: [], design: sampleResult.design }));
  const verdict = (other: SteadyState) =>
    assemble(
      options,
      [steady!, other].map((each) => ({ result: { ...sampleResult, steady: each }, studies: null })),
      USUAL_SETTINGS,
    ).verdict.split('\n');

  it('are named with the openings, and no others are', () => {
    expect(turnedOpenings(steady!, turn('stackExit'))).toEqual(['stack']);
    expect(turnedOpenings(steady!, steady!)).toEqual([]);
    const [same, turned] = [verdict(steady!), verdict(turn('stackExit'))];
    expect(turned.length).toBe(same.length + 1);
    expect(turned[0]).toMatch(/other.*stack.*one/);
  });

  it('not where only door gaps turn', () => expect(turnedOpenings(steady!, turn('gap'))).toEqual([]));
});

describe('an option that buys nothing', () => {
  const soaked = (soaked_s: number): EstimateResult => ({
    ...sampleResult,
    warmUp: { ...sampleResult.warmUp!, soaked_s },
  });
  const { studies: followed } = studyOption(exampleDesign('plain-24.yaml'));
  const verdict = (studies: OptionStudy['studies']) =>
    assemble(
      ['one', 'other'].map((label): Option => ({ label, changes: [], design: sampleResult.design })),
      [soaked(1800), soaked(5400)].map((result) => ({ result, studies })),
      USUAL_SETTINGS,
    ).verdict;

  it('is said to where its events were followed, and not before', () => {
    expect(verdict(followed)).toMatch(/buys nothing worth naming; costs a longer soak/);
    expect(verdict(null)).toMatch(/other instead of one costs a longer soak/);
  });
});

describe('what a result falls short of', () => {
  const { warmUp, steady, assumed } = sampleResult;
  const small = { ...assumed!, stations: assumed!.stations.map((each) => ({ ...each, thermometer_K: 350 })) };
  const cases: [ShortfallCode | null, Partial<EstimateResult>][] = [
    [null, {}],
    ['no-fire', { assumed: null, steady: null, warmUp: null }],
    ['not-held', { steady: null, warmUp: { ...warmUp!, gauge_s: null, soaked_s: null } }],
    ['not-reached', { assumed: small, warmUp: { ...warmUp!, gauge_s: null, soaked_s: null } }],
    ['not-reached', { assumed: small, warmUp: null }],
    ['not-followed', { warmUp: { ...warmUp!, gauge_s: null, soaked_s: null } }],
    ['not-soaked', { warmUp: { ...warmUp!, soaked_s: null } }],
    // steady states alone say nothing of soaking
    [null, { warmUp: null }],
  ];

  it.each(cases)('%s', (code, change) => {
    const result = { ...sampleResult, ...change };
    expect(shortfallOf(result)?.code ?? null).toBe(code);
    if (code === null) return;
    const whole: OptionStudy = { result: sampleResult, studies: null };
    const options = ['option 1', 'option 2'].map((label): Option => ({
      label,
      changes: [],
      design: sampleResult.design,
    }));
    for (const studies of [
      [whole, { result, studies: null }],
      [{ result, studies: null }, whole],
      [
        { result, studies: null },
        { result, studies: null },
      ],
    ]) {
      checkFirstSaid(assemble(options, studies, USUAL_SETTINGS), code);
    }
  });

  it('a hold fire of nothing and one of something', () => {
    const none = { ...steady!, fire_W: 0, wood_kg_per_s: 0, excessAirRatio: Infinity };
    const options = ['option 1', 'option 2'].map((label): Option => ({
      label,
      changes: [],
      design: sampleResult.design,
    }));
    for (const order of [
      [none, steady!],
      [steady!, none],
      [none, none],
    ]) {
      const studies = order.map((state): OptionStudy => ({
        result: { ...sampleResult, steady: state },
        studies: null,
      }));
      const comparison = assemble(options, studies, USUAL_SETTINGS);
      checkFirstSaid(comparison, 'no fire to hold');
      checkPrinted(comparison, 'no fire to hold');
    }
  });

  it('a thermometer that sinks for want of air under its splits has no swing', () => {
    const { result, studies } = studyOption(exampleDesign('plain-24.yaml'));
    const swing = { ...studies!.swing!, limitedByAir: true, mean_K: result.design.fire.target - 20 };
    const told = (found: Found) => ofResult('swing.thermometer_K').of(found);
    expect(told({ result, studies })).toBe(studies!.swing!.thermometer_K);
    expect(told({ result, studies: { ...studies!, swing } })).toBeNull();
  });

  it('an event that one option could not be followed through is no sameness', () => {
    const followed = studyOption(exampleDesign('plain-24.yaml'));
    const lost: OptionStudy = { ...followed, studies: { ...followed.studies!, swing: null, gust: null } };
    const options = ['option 1', 'option 2'].map((label): Option => ({
      label,
      changes: [],
      design: followed.result.design,
    }));
    for (const [studies, where] of [
      [[followed, lost], 'lacks'],
      [[lost, followed], 'gains'],
    ] as const) {
      const comparison = assemble(options, studies, USUAL_SETTINGS);
      expect(comparison.findings[0][where]).toEqual(['swing.thermometer_K', 'gust.dip_K']);
      expect(comparison.verdict).not.toContain('no difference in anything');
    }
    expect(assemble(options, [followed, followed], USUAL_SETTINGS).verdict).toContain('no difference in anything');
    expect(assemble(options, [lost, lost], USUAL_SETTINGS).findings[0].neither).toEqual([]);
  });

  it('the chart of options says what becomes of each', () => {
    const charted = (change: Partial<EstimateResult>) => {
      const config = optionsChart([{ label: 'x', result: { ...sampleResult, ...change } }], 1000);
      const scene = chartScene(config as never, { width: 1000, height: 300, bare: true, title: 'x', description: 'x' });
      return scene.shapes.flatMap((shape) =>
        shape.kind === 'text' && shape.text.startsWith('x: ') ? [shape.text] : [],
      );
    };
    const unread = { ...warmUp!, gauge_s: null, soaked_s: null };
    expect(charted({})).toEqual(['x: soaked 29 min']);
    expect(charted({ assumed: small, warmUp: unread })).toEqual(['x: never reads 250 °F']);
    expect(charted({ steady: null, warmUp: unread })).toEqual(['x: never reads 250 °F']);
    expect(charted({ warmUp: unread })).toEqual(['x: not followed further']);
    expect(charted({ warmUp: { ...warmUp!, soaked_s: null } })).toEqual(['x: never soaked']);
  });
});

describe('warnings', () => {
  const warning = (code: string, more: Partial<Warning> = {}): Warning => ({
    code,
    message: `${code} said`,
    where: 'chamber',
    value: null,
    limits: null,
    ...more,
  });
  const smoke = (share: number) =>
    warning('door-gap-smoke', { value: share * 0.02, limits: { high: 1e-3 * 0.02, unit: 'kg/s' } });

  it('of a code that nobody has ranked are shown', () => {
    expect(rankOf(warning('something-new'))).toBe('harm');
    expect(rankOf(warning('biot-above-limit'))).toBe('shop');
  });

  it('of smoke matter from a twentieth of the stack on', () => {
    expect([0.002, 0.049, 0.051, 0.4].map((share) => rankOf(smoke(share)))).toEqual(['shop', 'shop', 'harm', 'harm']);
  });

  it("stand on the buyer's first page where they matter, of every option, gravest first", () => {
    const codes = [
      'little-air',
      'biot-above-limit',
      'something-new',
      'draft-tips-over',
      'paint-above-limit',
      'back-draft',
    ];
    const warned = (given: Warning[]): OptionStudy => ({ result: { ...sampleResult, warnings: given }, studies: null });
    const options = ['option 1', 'option 2'].map((label): Option => ({
      label,
      changes: [],
      design: sampleResult.design,
    }));
    // an option that warns while the baseline does not
    const comparison = assemble(
      options,
      [warned([]), warned([...codes.map((code) => warning(code)), smoke(0.3)])],
      USUAL_SETTINGS,
    );
    const told = gravest(gatherWarnings(comparison.options)).map(({ code }) => code);
    expect(told).toEqual([
      'draft-tips-over',
      'back-draft',
      'something-new',
      'paint-above-limit',
      'door-gap-smoke',
      'little-air',
    ]);
    const sheet = buyerSheet(comparison, 'letter');
    const list = sheet.blocks.find((block) => block.kind === 'list') as Extract<Block, { kind: 'list' }>;
    expect(list.items.slice(0, 5)).toEqual(told.slice(0, 5).map((code) => `Warning, option 2: chamber: ${code} said`));
    expect(list.items[5]).toMatch(/^1 more/);
    expect(sheet.blocks.indexOf(list)).toBeLessThan(3);
  });

  it('of one code and place are told once, in the words of the gravest', () => {
    const given = [[smoke(0.01)], [smoke(0.3)]].map((warnings, i) => ({
      label: `option ${i + 1}`,
      result: { warnings },
    }));
    expect(gatherWarnings(given)).toMatchObject([
      { rank: 'harm', value: 0.3 * 0.02, labels: ['option 2', 'option 1'] },
    ]);
  });
});
