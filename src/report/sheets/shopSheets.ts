import { balanceWords } from '../../words/balanceWords.js';
import { GROUP_WORDS } from '../../words/quantityWords.js';
import { coldSmokeWords } from '../../words/coldSmokeWords.js';
import { capital, plainText } from '../../words/plainText.js';
import { SHEET, SHEETS, type PaperName } from '../../draw/theme.js';
import type { Geometry } from '../../design/geometry.js';
import { baselineOf } from '../../study/compare/baseline.js';
import type { Comparison } from '../../study/compare/compare.js';
import type { EstimateResult } from '../../study/estimate/result.js';
import { shortfallOf } from '../../study/estimate/shortfall.js';
import { verdictLines } from '../../study/compare/verdict.js';
import { gatherWarnings } from '../../words/warningRank.js';
import { format } from '../../units/index.js';
import { listed } from '../../units/listed.js';
import { PLATE_AND_LOSS, SOAKED_MEANS } from '../../words/cautions.js';
import { handlesData, towingData, towingWords, trailerData, TRAILER_NOTE, weightItemsData } from '../carryData.js';
import { compareRows, rowHead, tellingOfRow } from '../compareRows.js';
import { designRows } from '../designRows.js';
import { plateNotes } from '../../words/plateWords.js';
import { sayIn } from '../../words/quantity.js';
import { restsOnEach } from '../../words/restsOn.js';
import { airData, unknownsData, fittedNote, temperatureData, warmUpData, weightsData } from '../resultData.js';
import type { TableData } from '../text/table.js';
import type { Block, Sheet } from './blocks.js';
import { chartBlocks, temperatureBlocks } from './shopFigures.js';
import { sourcesOf } from './sources.js';
import { warningItems } from './warningItems.js';

/** Rows of inputs in one column of a page. */
const INPUT_ROWS = 43;
/** Options side by side in the full comparison. */
const OPTIONS_A_TABLE = 4;

const say = sayIn('shop');

/** What the sheets behind the buyer's are made of. */
export interface ShopInput {
  comparison: Comparison;
  /** paths of the fields that took their default, of the baseline */
  defaults: string[];
  /** of the baseline */
  geometry: Geometry;
  /** choices of sizes, where they were worked out */
  sizing?: { text: string; table: TableData };
  paper: PaperName;
}

/** What the shop needs behind the buyer's page: everything that went in, and everything that came out. */
export function shopSheets(input: ShopInput): Sheet[] {
  const { comparison, defaults, geometry, sizing, paper } = input;
  const { result } = baselineOf(comparison);
  const width = SHEETS[paper].width - 2 * SHEET.margin;
  const sheets: Sheet[] = [
    { title: 'Every input as read', fit: 'flow', blocks: inputBlocks(result, defaults, comparison) },
    {
      title: 'Parts, weights and heights',
      fit: 'flow',
      blocks: [...partBlocks(result, geometry), ...coldBlocks(result)],
    },
    ...carrySheets(result),
    { title: 'Temperatures and flows', fit: 'flow', blocks: stateBlocks(result, width) },
    { title: 'Warm-up, heat, pressure and vents', fit: 'flow', blocks: chartBlocks(comparison) },
  ];
  if (comparison.options.length > 1) {
    sheets.push({ title: 'The options in full', fit: 'flow', blocks: comparisonBlocks(comparison) });
  }
  if (sizing) {
    const blocks: Block[] = [
      { kind: 'text', text: sizing.text },
      { kind: 'table', table: sizing.table },
    ];
    sheets.push({ title: 'Sizes that would do', fit: 'flow', blocks });
  }
  sheets.push({ title: 'Estimates, warnings and sources', fit: 'flow', blocks: endBlocks(comparison) });
  return sheets;
}

function inputBlocks({ design }: EstimateResult, defaults: string[], comparison: Comparison): Block[] {
  const rows = designRows(design, defaults, say).map(({ path, value, isDefault, isFitted }) => [
    path,
    isFitted ? `${value} **` : isDefault ? `${value} *` : value,
  ]);
  const blocks: Block[] = [{ kind: 'text', text: '* not given in the design file: a usual value was taken.' }];
  const measured = restsOnEach(comparison.options, 'shop');
  if (measured.length > 0)
    blocks.push({ kind: 'text', text: ['** fitted to a measured cook.', ...measured].join(' ') });
  for (let from = 0; from < rows.length; from += 2 * INPUT_ROWS) {
    const part = rows.slice(from, from + 2 * INPUT_ROWS);
    const half = Math.ceil(part.length / 2);
    blocks.push({
      kind: 'columns',
      columns: [part.slice(0, half), part.slice(half)].map((each): Block[] => [
        { kind: 'table', table: { head: ['input', 'as read'], rows: each } },
      ]),
    });
  }
  const changes = comparison.options.filter(({ changes: each }) => each.length > 0);
  if (changes.length > 0) {
    blocks.push({
      kind: 'table',
      table: {
        caption: 'What the options change',
        head: ['option', 'input', 'instead'],
        align: ['left', 'left', 'left'],
        rows: changes.flatMap(({ label, changes: each }) =>
          each.map(({ path, value }, i) => [i === 0 ? plainText(label, 40) : '', plainText(path), plainText(value)]),
        ),
      },
    });
  }
  return blocks;
}

/** Whether it smokes cold, in a sentence. */
function coldBlocks(result: EstimateResult): Block[] {
  const cold = coldSmokeWords(result, 'shop');
  return cold === null ? [] : [{ kind: 'text', text: `Cold smoke: ${cold}.` }];
}

/** What hands find at handles and plates, and what a trailer carries, of a design that has them. */
function carrySheets(result: EstimateResult): Sheet[] {
  const { design, hands, weight } = result;
  const table = (caption: string, data: TableData): Block => ({ kind: 'table', table: { ...data, caption } });
  const mark = design.trailer ? "the trailer's mark" : "the firebox's outer end";
  const blocks: Block[] = [
    ...(hands && hands.handles.length > 0 ? [table('Handles, bare hand', handlesData(hands, 'shop'))] : []),
    ...(weight ? [table(`Weights, positions from ${mark}`, weightItemsData(weight, 'shop'))] : []),
    ...(weight?.trailer ? [table('What the trailer carries', trailerData(weight, design, 'shop'))] : []),
    ...(weight?.towing
      ? [
          table('Empty, loaded and after a cook', towingData(weight.towing, 'shop')),
          { kind: 'text', text: towingWords(weight.towing) } as const,
        ]
      : []),
    ...(weight ? [{ kind: 'text', small: true, text: TRAILER_NOTE } as const] : []),
  ];
  const subjects = [
    ...(hands && hands.handles.length > 0 ? ['handles'] : []),
    ...(weight ? [design.trailer ? 'trailer' : 'balance'] : []),
  ];
  const title = capital(listed(subjects));
  return blocks.length > 0 ? [{ title, fit: 'flow', blocks }] : [];
}

function partBlocks(result: EstimateResult, geometry: Geometry): Block[] {
  const inches = (metres: number) => say('length', metres, { shop: 'in' });
  return [
    { kind: 'table', table: { ...weightsData(result, 'shop'), caption: 'Areas, weights, volumes' } },
    {
      kind: 'text',
      text:
        `The largest Biot number of a part is ${Math.max(...result.geometry.parts.map(({ biot }) => biot)).toPrecision(2)}; ` +
        'below 0.1 a plate has one temperature through its thickness, as computed here.',
    },
    {
      kind: 'table',
      table: {
        caption: 'Heights above the ground',
        head: ['', 'floor inside', 'middle', 'roof inside'],
        rows: geometry.parts.map((part) => [part.name, inches(part.floor), inches(part.centre), inches(part.roof)]),
      },
    },
    {
      kind: 'table',
      table: {
        caption: 'Stacks',
        head: ['', 'bore', 'flow area', 'weight', 'base', 'top'],
        rows: geometry.stacks.map((stack, i) => [
          `on the ${result.design.stacks[i].part}`,
          say('length', stack.bore),
          say('area', stack.flowArea),
          say('mass', stack.mass),
          inches(stack.base),
          inches(stack.top),
        ]),
      },
    },
  ];
}

function stateBlocks(result: EstimateResult, width: number): Block[] {
  const { design, steady, assumed } = result;
  const target = format('temperature', design.fire.target);
  const short = shortfallOf(result)?.code === 'not-reached';
  const states = [
    // a fire that the pit isn't given holds nothing
    ...(steady
      ? [
          {
            title: short
              ? `At ${target}, as a larger fire than the full one would hold it: ${format('power', steady.fire_W)}`
              : `Holding ${target}`,
            state: steady,
          },
        ]
      : []),
    ...(assumed ? [{ title: 'Under the full fire, settled', state: assumed }] : []),
  ];
  if (states.length === 0) return [{ kind: 'text', text: 'No state settles: the warnings say why.' }];
  return [
    ...states.flatMap(({ title, state }): Block[] => [
      ...temperatureBlocks(result, { title, state, width }),
      { kind: 'table', table: { ...temperatureData(state, design.gauge, 'shop'), caption: title } },
    ]),
    {
      kind: 'text',
      text:
        'Gas is what flows past; the thermometer reads what a stem there takes up between gas and walls; steel is the mean of the ' +
        "station's outside walls; hottest outside is what a hand would touch.",
    },
    { kind: 'table', table: { ...airData(result, 'shop'), caption: 'Air and draft' } },
  ];
}

function comparisonBlocks(comparison: Comparison): Block[] {
  const { options, settings } = comparison;
  const blocks: Block[] = [{ kind: 'list', items: verdictLines(comparison).map(({ text }) => text) }];
  const rows = compareRows(comparison);
  const others = options.filter(({ label }) => label !== comparison.baseline);
  for (let from = 0; from < Math.max(1, others.length); from += OPTIONS_A_TABLE - 1) {
    const shown = [baselineOf(comparison), ...others.slice(from, from + OPTIONS_A_TABLE - 1)];
    let group = '';
    blocks.push({
      kind: 'table',
      table: {
        caption: `Every number, and how it differs from ${plainText(comparison.baseline, 40)}`,
        head: ['', '', ...shown.map(({ label }) => plainText(label, 30))],
        align: ['left', 'left'],
        rows: rows.map((row) => {
          const { measure, cells } = row;
          const telling = tellingOfRow(row, 'shop', settings.currency);
          const head = GROUP_WORDS[measure.group] === group ? '' : GROUP_WORDS[measure.group];
          group = GROUP_WORDS[measure.group];
          return [
            head,
            rowHead(row, telling),
            ...shown.map((option) => {
              const cell = cells[options.indexOf(option)];
              const value = telling.number(cell.value);
              const apart = option.label === comparison.baseline ? '' : telling.difference(cell);
              return apart === '' ? value : `${value} (${apart})`;
            }),
          ];
        }),
      },
    });
  }
  return blocks;
}

/** Whether plate stays flat and how long it lasts; nothing where no fire holds the target. */
function plateBlocks(comparison: Comparison): Block[] {
  const items = plateNotes(comparison, say).map((note) => plainText(note, 2000));
  return items.length > 0
    ? [
        { kind: 'heading', text: 'Does it stay flat, and how long does it last' },
        { kind: 'list', items },
      ]
    : [];
}

function endBlocks(comparison: Comparison): Block[] {
  const { result } = baselineOf(comparison);
  const { balance } = result;
  const warnings = warningItems(comparison, gatherWarnings(comparison.options));
  const fitted = fittedNote(result);
  return [
    ...(warnings.length > 0
      ? [
          { kind: 'heading', text: 'Warnings' } as const,
          {
            kind: 'list',
            items: warnings,
          } as const,
        ]
      : []),
    { kind: 'table', table: { ...warmUpData(result, 'shop'), caption: 'Warm-up' } },
    { kind: 'text', small: true, text: SOAKED_MEANS },
    {
      kind: 'table',
      table: { ...unknownsData(result, 'shop'), caption: 'Estimates used, which no handbook settles' },
    },
    ...(fitted === null ? [] : [{ kind: 'text', text: fitted } as const]),
    { kind: 'text', text: PLATE_AND_LOSS },
    ...plateBlocks(comparison),
    {
      kind: 'text',
      text: `Over the whole run ${balanceWords(balance)}.`,
    },
    { kind: 'heading', text: 'Sources' },
    { kind: 'list', small: true, items: sourcesOf(result.design) },
  ];
}
