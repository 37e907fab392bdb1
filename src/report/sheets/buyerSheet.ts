import { chartScene } from '../../charts/chartScene.js';
import { stackSection } from '../../design/stackSection.js';
import { drawingScene } from '../../draw/drawingScene.js';
import { gaugeLabel } from '../../words/labels.js';
import { optionsChart } from '../../charts/optionsChart.js';
import { pitDrawing } from '../../draw/pit/pitDrawing.js';
import { plainText } from '../../words/plainText.js';
import { SHEET, SHEETS, type PaperName } from '../../draw/theme.js';
import { baselineOf } from '../../study/compare/baseline.js';
import type { Comparison } from '../../study/compare/compare.js';
import type { EstimateResult } from '../../study/estimate/result.js';
import { shortfallOf, shortfallWords } from '../../study/estimate/shortfall.js';
import { cookLine } from '../../words/cookLine.js';
import { drawsSentence } from '../../words/draws.js';
import { gatherWarnings, gravest } from '../../words/warningRank.js';
import { placeAlone } from '../../words/warningPlace.js';
import { format, type UnitSystem } from '../../units/index.js';
import { CAUTIONS, NOT_A_GUARANTEE, SOAKED_MEANS } from '../../words/cautions.js';
import { carryBeside } from '../carryData.js';
import { assumedText, sureText } from './buyerNotes.js';
import { optionsTable } from './buyerTable.js';
import { shownOptions } from './shownOptions.js';
import { buyerVerdict } from './buyerVerdict.js';
import { LONGEST, MANY, shortLabel } from './shortLabel.js';
import type { Block, Sheet } from './blocks.js';
import { warningItems } from './warningItems.js';

/** Warnings that leave room for the rest of the page. */
const MOST_WARNINGS = { few: 5, many: 3 };
/** The drawing stands beside the chart: how they share the width, and how high the drawing gets at most [px]. */
const PICTURES = [5, 4];
const DRAWING_HEIGHT = 300;
/** The chart is drawn larger and set smaller: its lettering is meant for a screen. */
const CHART = { width: 430, height: 330 };
/** How the notes at the foot share the width: how sure it is takes most words. */
const NOTES = [4, 6, 5];

/**
 * One page for a buyer: what it is, what it looks like, what it does, how sure that is, and what to mind.
 *
 * @param alone no sheets lie behind it, so that it points to none
 * @param system that its numbers are told in
 */
export function buyerSheet(
  comparison: Comparison,
  paper: PaperName,
  alone = false,
  system: UnitSystem = 'shop',
): Sheet {
  const baseline = baselineOf(comparison);
  const { result } = baseline;
  const width = SHEETS[paper].width - 2 * SHEET.margin;
  const warnings = warningBlocks(comparison, alone, system);
  const { table, same } = optionsTable(comparison, alone, system);
  const chart = chartBlock(comparison, alone, system);
  const wide = chart ? ((width - SHEET.gutter) * PICTURES[0]) / (PICTURES[0] + PICTURES[1]) : width;
  const drawing = drawingBlock(result, { width: wide, maxHeight: DRAWING_HEIGHT, system });
  return {
    title: 'For the buyer',
    fit: 'one',
    blocks: [
      { kind: 'lead', text: buyerVerdict(comparison, alone, system) },
      ...warnings,
      chart ? { kind: 'columns', columns: [[drawing], [chart]], shares: PICTURES, flexible: true } : drawing,
      { kind: 'table', table },
      ...(same === '' ? [] : [{ kind: 'text', small: true, text: same } as const]),
      { kind: 'text', small: true, text: cookText(comparison, system) },
      ...carryBlocks(comparison, system),
      {
        kind: 'columns',
        shares: NOTES,
        columns: [
          [
            { kind: 'heading', text: 'What was assumed' },
            { kind: 'text', small: true, text: assumedText(result, system) },
          ],
          [
            { kind: 'heading', text: 'How sure it is' },
            { kind: 'text', small: true, text: sureText(result, alone, comparison.options.length > 1, system) },
          ],
          [
            { kind: 'heading', text: 'Take care' },
            { kind: 'text', small: true, text: CAUTIONS.replace(/^Cautions: f/, 'F') },
          ],
        ],
      },
      { kind: 'text', small: true, text: `This is ${NOT_A_GUARANTEE}.` },
    ],
  };
}

/** What a buyer has to know before he reads on; the rest of the warnings are the shop's. */
function warningBlocks(comparison: Comparison, alone: boolean, system: UnitSystem): Extract<Block, { kind: 'list' }>[] {
  const told = gravest(gatherWarnings(shownOptions(comparison), placeAlone));
  if (told.length === 0) return [];
  const most = comparison.options.length > MANY ? MOST_WARNINGS.many : MOST_WARNINGS.few;
  const more = told.length - most;
  const units = system === 'si' ? 'si' : 'both';
  const items = warningItems(comparison, told.slice(0, most), units).map((item) => `Warning, ${item}`);
  if (more > 0) items.push(`${more} more ${alone ? 'among the warnings of the page' : 'behind, with the estimates'}.`);
  return [{ kind: 'list', small: true, items }];
}

/** How a cook tends it and whether it draws: of the baseline, where there are several. */
function cookText(comparison: Comparison, system: UnitSystem): string {
  const { result, label } = baselineOf(comparison);
  const whose = comparison.options.length > 1 ? `${shortLabel(label, comparison)}: ` : '';
  return `${whose}${[cookLine(result, system), drawsSentence(result, system)].filter((text) => text !== '').join(' ')}`;
}

/**
 * What hands find, what the trailer carries and whether it smokes cold: that of every option where there are several.
 */
function carryBlocks(comparison: Comparison, system: UnitSystem): Block[] {
  const shown = shownOptions(comparison).map(({ label, result }) => ({
    label: `with ${shortLabel(label, comparison)}`.replace(/^with as drawn$/, 'as drawn'),
    result,
  }));
  const told = carryBeside(shown, system);
  return told.length > 0 ? [{ kind: 'text', small: true, text: told.join(' ') }] : [];
}

function drawingBlock(
  { design }: EstimateResult,
  size: { width: number; maxHeight: number; system: UnitSystem },
): Block {
  const drawing = pitDrawing(design, { ...size, arrange: 'row', lettering: 11 });
  const ratio = 96 / 0.0254 / drawing.scale;
  return {
    kind: 'figure',
    flexible: true,
    caption: `Side view and end view, drawn to scale about 1:${Number(ratio.toPrecision(2))}. Where stacks and vents stand along and across is drawn, not given.${drawing.unsaid.map((each) => ` ${each}`).join('')}`,
    scene: drawingScene(drawing, {
      title: 'Side view and end view of the pit',
      description: pitWords(design, size.system),
    }),
  };
}

/** A pit told in a sentence, for those who can't see its drawing. */
export function pitWords(design: EstimateResult['design'], system: UnitSystem = 'shop'): string {
  const size = (metres: number) => format('length', metres, system);
  const across = (part: { width: number; height: number; shape?: string }) =>
    part.shape === 'round' ? `${size(part.width)} round` : `${size(part.width)} wide and ${size(part.height)} high`;
  const covers = ({ lining, shield }: Pick<EstimateResult['design']['firebox'], 'lining' | 'shield'>) =>
    (lining && lining.thickness > 0 ? `, lined with ${size(lining.thickness)} of ${lining.material}` : '') +
    (shield ? ', with a heat shield' : '');
  const { firebox, chamber, upright, stacks } = design;
  const parts = [
    `firebox ${across(firebox)}, ${size(firebox.length)} long, of ${format('plate', firebox.plate, system)} plate${covers(firebox)}`,
    ...(chamber
      ? [
          `chamber ${across(chamber)}, ${size(chamber.length)} long, of ${format('plate', chamber.plate, system)} plate${covers(chamber)}`,
        ]
      : []),
    ...(upright
      ? [
          `upright ${across(upright)}, ${size(upright.depth)} deep, of ${format('plate', upright.plate, system)} plate${covers(upright)}`,
        ]
      : []),
    ...stacks.map((stack) => {
      const { round, across, along } = stackSection(stack);
      const section = round ? `${size(across)} across` : `${size(across)} × ${size(along)}`;
      return `stack ${section} and ${size(stack.height)} long on the ${stack.part}`;
    }),
  ];
  return `${parts.join('; ')}.`;
}

function chartBlock(comparison: Comparison, alone: boolean, system: UnitSystem): Block | null {
  const shown = shownOptions(comparison);
  const config = optionsChart(
    shown.map(({ label, result }) => ({
      label: shown.length > 1 ? shortLabel(label, comparison) : 'this pit',
      result,
    })),
    CHART.width,
    system === 'si' ? 'si' : 'both',
  );
  if (!config) return null;
  const { gauge } = shown[0].result.design;
  const banded = shown.filter(({ result }) => result.spread?.curves);
  const whose = shown.length > 1 && banded.length === 1 ? ` of ${shortLabel(banded[0].label, comparison)}` : '';
  // the numbers beside it are the middle of the cases, and may differ
  const line = shown.length > 1 ? '; each line is the likeliest' : '; the line is the likeliest';
  const bands =
    ['', `${line}, the band holds 8 of 10 cases${whose}`][banded.length] ?? `${line}, each band holds 8 of 10 cases`;
  const title = `What the ${gaugeLabel(gauge)} reads while it warms up`;
  return {
    kind: 'figure',
    flexible: true,
    caption: `${title}${bands}. Dots: soaked. ${SOAKED_MEANS}${alone ? '' : ' Numbers in the sheets behind.'}`,
    scene: chartScene(config as never, {
      ...CHART,
      bare: true,
      title,
      description: shown.map(({ label, result }) => warmUpWords(label, result, system)).join(' '),
    }),
  };
}

/** When a pit reads the target and is soaked, in a sentence, or why it never does. */
export function warmUpWords(label: string, result: EstimateResult, system: UnitSystem = 'shop'): string {
  const name = plainText(label, LONGEST);
  const shortfall = shortfallOf(result);
  if (shortfall) return `${name} ${shortfallWords(shortfall, result, system)}.`;
  const { design, warmUp } = result;
  const target = format('temperature', design.fire.target, system);
  const times = [warmUp?.gauge_s, warmUp?.soaked_s].map((time) => format('time', time ?? null));
  return `${name} reads ${target} after ${times[0]} and is soaked after ${times[1]}.`;
}
