import { chartScene } from '../../charts/chartScene.js';
import { stackSection } from '../../design/stackSection.js';
import { drawingScene } from '../../draw/drawingScene.js';
import { gaugeLabel } from '../../words/labels.js';
import { optionsChart } from '../../charts/optionsChart.js';
import { pitDrawing } from '../../draw/pit/pitDrawing.js';
import { breakText } from '../../draw/textWidth.js';
import { capital, plainText } from '../../words/plainText.js';
import { SHEET, SHEETS, type PaperName } from '../../draw/theme.js';
import { baselineOf, type ComparedOption, type Comparison } from '../../study/compare/compare.js';
import type { EstimateResult } from '../../study/estimate/result.js';
import { shortfallOf, shortfallWords } from '../../study/estimate/shortfall.js';
import { MISSING } from '../../study/compare/told.js';
import { gatherWarnings, gravest } from '../../words/warningRank.js';
import { format, type UnitSystem } from '../../units/index.js';
import { CAUTIONS, NOT_A_GUARANTEE, SOAKED_MEANS } from '../../words/cautions.js';
import { carryBeside } from '../carryData.js';
import { compareRows, isSame, tellingOfRow, type CompareRow } from '../compareRows.js';
import { restsOn } from '../../words/restsOn.js';
import { inUnits } from '../../words/warningWords.js';
import { windWords } from '../../words/windWords.js';
import { headlineOf, headlineText, rangeText, wordsOf } from '../../words/quantityWords.js';
import { buyerVerdict } from './buyerVerdict.js';
import { LONGEST, MANY, shortLabel } from './shortLabel.js';
import type { TableData } from '../text/table.js';
import type { Block, Sheet } from './blocks.js';
import { warningItems } from './warningItems.js';

/** What a buyer weighs up, in the order he asks. */
const ASKED = [
  'gauge_s',
  'soaked_s',
  'woodToSoaked_kg',
  'hold.wood_kg_per_s',
  'hold.fire_W',
  'hold.grate_K',
  'hold.endToEnd_K',
  'hold.hottestOutside_K',
  'swing.thermometer_K',
  'plate.push_m',
  'plate.halfGone_years',
  'steel_kg',
];
/** What he pays, where the design has prices. */
const COSTS = ['buildCost', 'cookCost', 'payback'];
/** Columns that a sheet has room for. */
export const MOST_OPTIONS = 6;
/** Warnings that leave room for the rest of the page. */
const MOST_WARNINGS = { few: 5, many: 3 };
/** Height that a line of warnings or plates takes from the drawing, and what that keeps [px]. */
const LINE = 20;
const LEAST_DRAWING = 190;
const DRAWING_HEIGHT = { few: 262, many: 236 };
const SMALL = { size: SHEET.small, weight: 400 } as const;
/** The chart is drawn larger and set smaller: its lettering is meant for a screen. */
const CHART = { width: 1000, height: 240 };

/** The options that the buyer's sheet shows: the baseline, then the others in their order. */
export function shownOptions(comparison: Comparison): ComparedOption[] {
  const first = baselineOf(comparison);
  return [first, ...comparison.options.filter((option) => option !== first)].slice(0, MOST_OPTIONS);
}

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
  const few = comparison.options.length <= MANY;
  // the chart lives on what the rest leaves
  const lines =
    Math.max(0, table.rows.length - ASKED.length) +
    warnings.flatMap(({ items }) => items).reduce((sum, item) => sum + breakText(item, width, SMALL).length, 0);
  const maxHeight = Math.max(LEAST_DRAWING, (few ? DRAWING_HEIGHT.few : DRAWING_HEIGHT.many) - LINE * lines);
  return {
    title: 'For the buyer',
    fit: 'one',
    blocks: [
      { kind: 'lead', text: buyerVerdict(comparison, alone, system) },
      ...warnings,
      drawingBlock(result, { width, maxHeight, system }),
      { kind: 'table', table },
      ...(same === '' ? [] : [{ kind: 'text', small: true, text: same } as const]),
      ...carryBlocks(comparison, system),
      ...chartBlock(comparison, alone, system),
      {
        kind: 'columns',
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
  const items = warningItems(comparison, told.slice(0, most)).map(
    (item) => `Warning, ${system === 'si' ? inUnits(item, system) : item}`,
  );
  if (more > 0) items.push(`${more} more ${alone ? 'among the warnings of the page' : 'behind, with the estimates'}.`);
  return [{ kind: 'list', small: true, items }];
}

/** What hands find, what the trailer carries and whether it smokes cold: that of every option where there are several. */
function carryBlocks(comparison: Comparison, system: UnitSystem): Block[] {
  const shown = shownOptions(comparison).map(({ label, result }) => ({
    label: `with ${shortLabel(label, comparison)}`.replace(/^with as drawn$/, 'as drawn'),
    result,
  }));
  const told = carryBeside(shown, system);
  return told.length > 0 ? [{ kind: 'text', small: true, text: told.join(' ') }] : [];
}

/** A place without the fire under which it was found: to a buyer it is one warning. */
function placeAlone(where: string): string {
  return where.replace(/, (?:assumed|hold) fire$/, '');
}

function drawingBlock(
  { design }: EstimateResult,
  size: { width: number; maxHeight: number; system: UnitSystem },
): Block {
  const drawing = pitDrawing(design, { ...size, arrange: 'row', lettering: 11 });
  const ratio = 96 / 0.0254 / drawing.scale;
  return {
    kind: 'figure',
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

/** What differs between the options as a table, and what doesn't in a sentence. */
function optionsTable(comparison: Comparison, alone: boolean, system: UnitSystem): { table: TableData; same: string } {
  const shown = shownOptions(comparison);
  const several = shown.length > 1;
  const rows = compareRows(comparison);
  const together = rows.some(({ measure }) => measure.key === 'buildCost');
  const asked = [
    ...[...ASKED, 'lining_kg', ...(together ? [] : ['steelCost']), ...COSTS].flatMap((key) =>
      rows.filter(({ measure }) => measure.key === key),
    ),
    ...(several ? plateRows(rows) : []),
  ];
  const others = shown.slice(1).map((option) => comparison.options.indexOf(option));
  const differing = asked.filter((row) => !isSame(row, others, system));
  // where nothing differs the numbers themselves are what is left to show
  const sorted = differing.length > 0 ? differing : asked;
  const hidden = comparison.options.length - shown.length;
  const more = hidden > 0 ? `; ${hidden} more ${alone ? 'left out' : 'on the sheets behind'}` : '';
  const { design } = baselineOf(comparison).result;
  const target = format('temperature', design.fire.target, system);
  const { currency } = comparison.settings;
  const base = comparison.options.indexOf(shown[0]);
  const same = asked
    .filter((row) => !sorted.includes(row))
    .map((row) => `${words(row, design.gauge)} ${tellingOfRow(row, system, currency).quantity(row.cells[base].value)}`);
  const table: TableData = {
    caption: several
      ? `What each option does at ${target}, and how it differs from ${shortLabel(comparison.baseline, comparison)}${more}`
      : `What it does at ${target}`,
    head: ['', ...(several ? shown.map(({ label }) => shortLabel(label, comparison)) : ['shop units', 'metric'])],
    rows: sorted.map((row) => {
      if (!several) {
        return [
          words(row, design.gauge),
          ...(['shop', 'si'] as const).map((each) => middleText(row, baselineOf(comparison), each, currency)),
        ];
      }
      const telling = tellingOfRow(row, system, currency);
      return [
        [words(row, design.gauge), telling.unit].filter((text) => text !== '').join(', '),
        ...shown.map((option) => {
          const cell = row.cells[comparison.options.indexOf(option)];
          const value = telling.number(cell.value);
          const difference = option.label === comparison.baseline ? '' : telling.difference(cell);
          return difference === '' || difference === MISSING ? value : `${value}\n${difference}`;
        }),
      ];
    }),
  };
  return { table, same: same.length === 0 ? '' : `The same in all: ${same.join(', ')}.` };
}

/** Which plate each part and door has: what is of one plate in every option shares a row. A stack keeps its wall. */
function plateRows(rows: readonly CompareRow[]): CompareRow[] {
  const byPlates = new Map<string, CompareRow>();
  for (const row of rows) {
    if (row.measure.group !== 'plate' || row.measure.part === 'stack') continue;
    const plates = row.cells.map(({ value }) => value).join();
    const known = byPlates.get(plates)?.measure;
    byPlates.set(plates, known ? { ...row, measure: { ...known, at: `${known.at}, ${row.measure.at}` } } : row);
  }
  return [...byPlates.values()];
}

/** A number of one design: where its spread was studied the middle of it, and what 8 of 10 cases lie in. */
function middleText(row: CompareRow, { result }: ComparedOption, system: UnitSystem, currency?: string): string {
  const telling = tellingOfRow(row, system, currency);
  const number = result.spread?.numbers.find(({ key }) => key === row.measure.key);
  if (number?.p50 == null) return telling.quantity(row.cells[0].value);
  const text = headlineText(headlineOf(number.key, result.design), number.p50, system);
  return `${text} (${rangeText(number, result.design, system)})`;
}

function words({ measure }: CompareRow, gauge: EstimateResult['design']['gauge']): string {
  return measure.name === 'gauge_s' ? `${gaugeLabel(gauge)} first reads it, at least` : wordsOf(measure, 'buyer');
}

function chartBlock(comparison: Comparison, alone: boolean, system: UnitSystem): Block[] {
  const shown = shownOptions(comparison);
  const config = optionsChart(
    shown.map(({ label, result }) => ({
      label: shown.length > 1 ? shortLabel(label, comparison) : 'this pit',
      result,
    })),
    CHART.width,
  );
  if (!config) return [];
  const { gauge } = shown[0].result.design;
  const banded = shown.filter(({ result }) => result.spread?.curves);
  const whose = shown.length > 1 && banded.length === 1 ? ` of ${shortLabel(banded[0].label, comparison)}` : '';
  const bands = ['', `; the band holds 8 of 10 cases${whose}`][banded.length] ?? '; each band holds 8 of 10 cases';
  const title = `What the ${gaugeLabel(gauge)} reads while it warms up`;
  return [
    {
      kind: 'figure',
      flexible: true,
      caption: `${title}${bands}. Dots: soaked. ${SOAKED_MEANS}${alone ? '' : ' Numbers in the sheets behind.'}`,
      scene: chartScene(config as never, {
        ...CHART,
        bare: true,
        title,
        description: shown.map(({ label, result }) => warmUpWords(label, result, system)).join(' '),
      }),
    },
  ];
}

export function warmUpWords(label: string, result: EstimateResult, system: UnitSystem = 'shop'): string {
  const name = plainText(label, LONGEST);
  const shortfall = shortfallOf(result);
  if (shortfall) return `${name} ${shortfallWords(shortfall, result, system)}.`;
  const { design, warmUp } = result;
  const target = format('temperature', design.fire.target, system);
  const times = [warmUp?.gauge_s, warmUp?.soaked_s].map((time) => format('time', time ?? null));
  return `${name} reads ${target} after ${times[0]} and is soaked after ${times[1]}.`;
}

function assumedText(result: EstimateResult, system: UnitSystem): string {
  const { design } = result;
  const { site, wood, fire } = design;
  const reached = result.warmUp?.gauge_s != null;
  return [
    reached
      ? `A full fire of ${format('power', fire.heat, system)} until the ${gaugeLabel(design.gauge)} reads ` +
        `${format('temperature', fire.target, system)}, then just what holds it.`
      : `A full fire of ${format('power', fire.heat, system)} throughout.`,
    `${capital(plainText(wood.kind, 30))} at ${format('share', wood.moisture)} moisture.`,
    `Outdoors ${format('temperature', site.air, system)}, ${format('length', site.altitude, system, { unit: system === 'si' ? 'm' : 'ft' })} up` +
      `${site.sun > 0 ? ', in the sun' : ''}${site.rain > 0 ? ', in rain' : ''}.`,
    `Wind ${windWords(design, (kind, si) => format(kind, si, system))}.`,
  ].join(' ');
}

const SURE = ['gauge_s', 'soaked_s', 'hold.wood_kg_per_s'];

function sureText(
  { design, spread, estimates }: EstimateResult,
  alone: boolean,
  several: boolean,
  system: UnitSystem,
): string {
  const measured = restsOn(design, system, true);
  const known =
    (measured === null ? '' : `${measured} `) +
    'Heat and air add up, and the physics is checked against published examples and measured room fires; no wood-fired pit with ' +
    'open measurements was found to check a whole one against.';
  if (!spread) {
    return (
      `${estimates.length} things no handbook settles, such as the share of the fire's heat that leaves as radiation, are estimates ` +
      `with a spread${alone ? '' : ', listed behind'}. ${known}`
    );
  }
  const told = SURE.flatMap((key) => {
    const number = spread.numbers.find((each) => each.key === key);
    if (!number || number.p10 === null) return [];
    const quantity = headlineOf(key, design);
    const middle = headlineText(quantity, number.p50, system);
    return [`${wordsOf(quantity, 'alone')} ${middle} (${rangeText(number, design, system)})`];
  });
  return (
    `The middle of ${spread.cases} cases, with ${estimates.length} estimates drawn from their spreads, and what 8 of 10 lie in: ` +
    `${told.join('; ')}. ${several ? 'Options are held against each other with every estimate at its likeliest. ' : ''}${known}`
  );
}
