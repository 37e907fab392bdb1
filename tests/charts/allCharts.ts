/**
 * Every chart of a design at every size that it is made at: files, sheets, and the page on a phone, a tablet and a
 * desk.
 */
import { readFileSync } from 'node:fs';
import { chartScene } from '../../src/charts/chartScene.js';
import { chartWords } from '../../src/charts/chartWords.js';
import { compareCharts } from '../../src/charts/compareCharts.js';
import { cookCharts } from '../../src/charts/cookChart.js';
import { estimateCharts, type NamedChart } from '../../src/charts/estimateCharts.js';
import { geometryOf } from '../../src/design/geometryOf.js';
import { parseVariation, type Variation } from '../../src/design/vary.js';
import type { Scene } from '../../src/draw/scene.js';
import { CHART_LABELS } from '../../src/page/chartLabels.js';
import { chartPicture } from '../../src/page/chartPicture.js';
import type { ChartId } from '../../src/page/protocol.js';
import type { Block } from '../../src/report/sheets/blocks.js';
import { reportDocument } from '../../src/report/sheets/reportDocument.js';
import { assemble, type Comparison } from '../../src/study/compare/compare.js';
import { planComparison, runComparisonCases, summariseComparison } from '../../src/study/compare/compareSpread.js';
import { optionsOf } from '../../src/study/compare/options.js';
import { USUAL_SETTINGS } from '../../src/study/compare/studyOption.js';
import { estimate } from '../../src/study/estimate/estimate.js';
import type { EstimateResult } from '../../src/study/estimate/result.js';
import { followCook } from '../../src/study/events/cook.js';
import { cooked } from '../../src/study/events/cooked.js';
import { seededRandom } from '../../src/study/spread/random.js';
import { planSpread, runSpreadCases, summariseSpread } from '../../src/study/spread/uncertainty.js';
import { studiedAsUsual } from '../support/compared.js';
import { exampleDesign } from '../support/examples.js';
import { overlapsIn } from './overlaps.js';

/** Widths of the page's charts on screens of 360, 390, 820, 1280 and 1600 px, and of a very wide one. */
const PAGE_WIDTHS = [296, 326, 420, 542, 756, 1100];
const PLATES = ['1/4 in', '1/8 in', '3/8 in'];
const CASES = 6;

export interface Charted {
  result: EstimateResult;
  comparison: Comparison;
}

/** An example with all that a chart can show of it, and with other plates beside it. */
export async function charted(name: string, plates = PLATES, cases = CASES): Promise<Charted> {
  const design = exampleDesign(name);
  const result = estimate(design, { further: (solution) => cooked(solution, true) });
  const random = { seed: 1, random: seededRandom(1) };
  if (result.warmUp) {
    const plan = planSpread(result, { cases, ...random });
    result.spread = summariseSpread(result, plan, runSpreadCases(plan, 0, cases));
  }
  const text = readFileSync(new URL(`../../examples/${name}`, import.meta.url), 'utf8');
  const options = await optionsOf(text, name, [parseVariation(`all.plate=${plates.join(' | ')}`) as Variation]);
  if ('faults' in options) throw new Error(options.faults.join('\n'));
  const studies = options.map(studiedAsUsual);
  if (result.spread) studies[0].result = { ...studies[0].result, spread: result.spread };
  const comparison = assemble(options, studies, USUAL_SETTINGS);
  const plan = planComparison(comparison, { cases: 1, ...random });
  comparison.spread = summariseComparison(comparison, plan, runComparisonCases(plan, 0, 1));
  return { result, comparison };
}

/** What lies over what in a file of charts. */
export function overlapsInFiles(charts: readonly NamedChart[]): string[] {
  return charts.flatMap(({ file, config }) => told(file, chartScene(config, chartWords(config))));
}

/** What lies over what in all charts of an example, those of the page so wide. */
export function overlapsInAll({ result, comparison }: Charted, widths = PAGE_WIDTHS): string[] {
  const day = followCook(result.design);
  return [
    ...overlapsInFiles(estimateCharts(result)),
    ...overlapsInFiles(compareCharts(comparison)),
    ...overlapsInFiles(day ? cookCharts(day, result.design) : []),
    ...onPage({ result, comparison }, widths),
    ...onSheets(result, comparison),
  ];
}

function onPage({ result, comparison }: Charted, widths: readonly number[]): string[] {
  const all = comparison.options.map(({ label, result: each }) => ({ label, result: each }));
  return (Object.keys(CHART_LABELS) as ChartId[]).flatMap((chart) =>
    widths.flatMap((width, i) =>
      (chart === 'options' ? [all, all.slice(0, 1)] : [[]]).flatMap((options) => {
        // one choice of units after the other, from width to width
        const units = (['both', 'si', 'shop'] as const)[i % 3];
        const { scene } = chartPicture({ kind: 'chart', chart, width, units, result, options, hidden: [] });
        return scene ? told(`page, ${chart}, ${width} px`, scene) : [];
      }),
    ),
  );
}

function onSheets(result: EstimateResult, comparison: Comparison): string[] {
  const alone = assemble(
    [{ label: 'as drawn', changes: [], design: result.design }],
    [{ result, studies: null }],
    USUAL_SETTINGS,
  );
  return [alone, comparison].flatMap((each) => {
    const geometry = geometryOf(each.options[0].result.design);
    const { sheets } = reportDocument({ comparison: each, defaults: [], geometry, paper: 'letter' });
    return sheets.flatMap(({ title, blocks }) =>
      figuresIn(blocks).flatMap(({ caption, scene }) =>
        told(`sheet of ${each.options.length}, ${title}, ${caption.slice(0, 40)}`, scene),
      ),
    );
  });
}

function figuresIn(blocks: readonly Block[]): Extract<Block, { kind: 'figure' }>[] {
  return blocks.flatMap((block) =>
    block.kind === 'figure' ? [block] : block.kind === 'columns' ? block.columns.flatMap(figuresIn) : [],
  );
}

function told(where: string, scene: Scene): string[] {
  return overlapsIn(scene).map((fault) => `${where}: ${fault}`);
}
