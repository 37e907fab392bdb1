/** What hands find and what a trailer carries, as tables. */
import { coldSmokeWords } from '../words/coldSmokeWords.js';
import { stationLabel } from '../words/labels.js';
import { plainText } from '../words/plainText.js';
import type { Design } from '../design/design.js';
import { HOLDS as HOLDS_S, type HandsResult, type Touched } from '../study/carry/touch.js';
import type { EstimateResult } from '../study/estimate/result.js';
import { TONGUE_BAND, type Towing } from '../study/carry/towing.js';
import { tonguePercent } from '../study/carry/trailerLoads.js';
import { moveWords, type WeightResult } from '../study/carry/weight.js';
import { format, type UnitSystem } from '../units/index.js';
import { listed } from '../units/listed.js';
import { sayAlone, sayIn } from '../words/quantity.js';
import type { TableData } from './text/table.js';

/** What stands under every table of a trailer. */
export const TRAILER_NOTE =
  'Level and at rest, from the design alone. Frame, axles, brakes, coupler, tyres and tie-downs are for those who answer for ' +
  'them: licensed practice and the road rules decide, and a scale before the road.';

/** What stands under every table of what hands find. */
export const HANDS_NOTE =
  'Handles in still air, where their plate is hottest; the plate takes 40 % of what they see unless the file says otherwise ' +
  '(estimate). A wind cools them, gloves and bare skin differ, and children burn sooner. ' +
  "Thresholds are not predictions: 'burns' means at or above the threshold of that hold on bare metal.";

function verdict({ temperature_K, verdicts }: Touched, system: UnitSystem): string[] {
  const say = sayIn(system);
  return [say('temperature', temperature_K), ...verdicts.map(({ burns }) => (burns ? 'burns' : 'can be held'))];
}

const HOLDS = HOLDS_S.map((seconds) => `${seconds} s`);

/** What handles, trailer and cold smoke come to, a sentence each; nothing where the design has none. */
export function carrySentences(result: EstimateResult, system: UnitSystem): string[] {
  const [hands, cold] = [handleWords(result), coldSmokeWords(result, system)];
  return [
    ...(hands === null ? [] : [`Handles, bare hand: ${hands}.`]),
    ...weightSentences(result, system),
    ...(cold === null ? [] : [`Cold smoke: ${cold}.`]),
  ];
}

interface Beside {
  /** `as drawn`, or `with` what it is called */
  label: string;
  result: EstimateResult;
}

/** The same of several options: what is the same in all of them once. */
export function carryBeside(options: readonly Beside[], system: UnitSystem): string[] {
  if (options.length === 1) return carrySentences(options[0].result, system);
  const trailer = trailerBeside(options, system);
  return [
    ...eachOf('Handles, bare hand', options, handleWords),
    ...(trailer.length > 0
      ? trailer
      : eachOf('', options, (result) => weightSentences(result, system).join(' ') || null)),
    ...eachOf('Cold smoke', options, (result) => coldSmokeWords(result, system)),
  ];
}

/** What options say on one matter, those that say the same together. */
function eachOf(head: string, options: readonly Beside[], words: (result: EstimateResult) => string | null): string[] {
  const told = new Map<string, string[]>();
  for (const { label, result } of options) {
    const text = words(result)?.replace(/\.$/, '');
    if (text !== undefined) told.set(text, [...(told.get(text) ?? []), label]);
  }
  const one = told.size === 1 && [...told.values()][0].length === options.length;
  const clauses = [...told].map(([text, labels]) => (one ? text : `${listed(labels)}: ${text}`));
  return clauses.length > 0 ? [`${head === '' ? '' : `${head}: `}${clauses.join('; ')}.`] : [];
}

/** What a bare hand finds on the handles; null where there are none. */
function handleWords({ hands }: EstimateResult): string | null {
  if (!hands || hands.handles.length === 0) return null;
  const told = new Map<string, string[]>();
  for (const { name, hold, full } of hands.handles) {
    const [holding, hot] = [hold, full].map((state) => burnWords(state?.hand));
    const words = [
      ...(holding === null ? [] : [`${holding} ${holding === hot ? 'under either fire' : 'while holding'}`]),
      ...(hot === null || hot === holding ? [] : [`${hot} under the full fire`]),
    ];
    const found = words.length > 0 ? words.join(', ') : 'can be held under either fire';
    told.set(found, [...(told.get(found) ?? []), plainText(name, 24)]);
  }
  return [...told]
    .map(([found, names]) => `${listed(names)} ${names.length > 1 ? found.replaceAll('burns', 'burn') : found}`)
    .join('; ');
}

/** What the trailer of several options carries, against its ratings: heavier plate is on its axles. */
function trailerBeside(options: readonly Beside[], system: UnitSystem): string[] {
  const say = sayAlone(system);
  const rated = options[0].result.design.trailer;
  const loads = options.flatMap(({ label, result }) => {
    const trailer = result.weight?.trailer;
    return trailer ? [{ label, trailer }] : [];
  });
  if (!rated || loads.length !== options.length) return [];
  const each = (of: 'axleLoad_kg' | 'tongueLoad_kg', most: number) =>
    listed(
      loads.map(({ label, trailer }) => {
        const over = trailer[of] > most ? ' (OVER)' : '';
        return `${say('mass', trailer[of])}${over} ${label}`;
      }),
    );
  return [
    `Trailer: its axles, rated for ${say('mass', rated.axleRating)}, carry ${each('axleLoad_kg', rated.axleRating)}; its tongue, ` +
      `rated for ${say('mass', rated.hitchRating)}, carries ${each('tongueLoad_kg', rated.hitchRating)}.`,
  ];
}

function weightSentences({ design, weight }: EstimateResult, system: UnitSystem): string[] {
  const say = sayAlone(system);
  const sentences: string[] = [];
  if (weight?.trailer && design.trailer) {
    const { axleLoad_kg, tongueLoad_kg } = weight.trailer;
    const { axleRating, hitchRating } = design.trailer;
    sentences.push(
      `Trailer: ${say('mass', axleLoad_kg)} on the axles, rated for ${say('mass', axleRating)}, and ${say('mass', tongueLoad_kg)} ` +
        `on the tongue, rated for ${say('mass', hitchRating)}, ${tonguePercent(weight.trailer)} of the whole.` +
        (weight.towing ? ` ${towingVerdict(weight.towing)}` : ''),
    );
  } else if (weight) {
    const { mass_kg, position_m } = weight.pit;
    sentences.push(
      `The pit weighs ${say('mass', mass_kg)} and balances ${say('length', position_m, { shop: 'in', si: 'm' })} from the ` +
        "firebox's outer end.",
    );
  }
  return sentences;
}

/** What a hold of 1 s or of 10 s does to a bare hand; null: neither burns it. */
function burnWords(touched: Touched | undefined): string | null {
  const burning = touched?.verdicts.find(({ burns }) => burns);
  if (!burning) return null;
  return burning.hold_s <= HOLDS_S[0] ? 'burns at a touch' : `burns when held for ${burning.hold_s} s`;
}

/** Where the hand begins on each handle, under each fire. */
export function handlesData({ handles }: HandsResult, system: UnitSystem): TableData {
  return {
    head: ['', 'fire', 'plate', 'hand begins at', ...HOLDS, 'coolest'],
    rows: handles.flatMap(({ name, station, hold, full }) =>
      [
        { fire: 'holding', state: hold },
        { fire: 'full', state: full },
      ].flatMap(({ fire, state }, i) =>
        state
          ? [
              [
                i === 0 || !hold ? `${plainText(name, 24)}, ${stationLabel(station)}` : '',
                fire,
                format('temperature', state.base_K, system),
                ...verdict(state.hand, system),
                format('temperature', state.tip_K, system),
              ],
            ]
          : [],
      ),
    ),
    align: ['left', 'left', 'right', 'right', 'left', 'left', 'right'],
  };
}

/** The hottest outside of each station against the same thresholds. */
export function surfacesData({ surfaces }: HandsResult, system: UnitSystem): TableData {
  const cells = (state: Touched | null) => (state ? verdict(state, system) : ['-', '', '']);
  return {
    head: ['', 'holding', ...HOLDS, 'full fire', ...HOLDS],
    rows: surfaces.map(({ station, hold, full }) => [stationLabel(station), ...cells(hold), ...cells(full)]),
    align: ['left', 'right', 'left', 'left', 'right', 'left', 'left'],
  };
}

/** Each weight with where it acts. */
export function weightItemsData({ items, pit, total }: WeightResult, system: UnitSystem): TableData {
  const say = sayIn(system);
  const row = (name: string, mass: number, position: number, height: number | null) => [
    plainText(name, 40),
    say('mass', mass),
    say('length', position, { shop: 'in', si: 'm' }),
    height === null ? '' : say('length', height, { shop: 'in', si: 'm' }),
  ];
  return {
    head: ['', 'weight', 'acts at', 'above the ground'],
    rows: [
      ...items.map((each) => row(each.name, each.mass_kg, each.position_m, each.height_m)),
      row('the pit alone', pit.mass_kg, pit.position_m, pit.height_m),
      row('all together', total.mass_kg, total.position_m, null),
    ],
  };
}

/** What axle and tongue carry against their ratings; no rows without a trailer. */
export function trailerData({ trailer, total }: WeightResult, design: Design, system: UnitSystem): TableData {
  const say = sayIn(system);
  const rated = design.trailer;
  const margin = (spare: number) => (spare < 0 ? `OVER by ${say('mass', -spare)}` : `${say('mass', spare)} in hand`);
  return {
    head: ['', 'load', 'rating', ''],
    rows:
      trailer && rated
        ? [
            ['axles', say('mass', trailer.axleLoad_kg), say('mass', rated.axleRating), margin(trailer.axleMargin_kg)],
            [
              'tongue',
              say('mass', trailer.tongueLoad_kg),
              say('mass', rated.hitchRating),
              margin(trailer.hitchMargin_kg),
            ],
            ['all on the ground', say('mass', total.mass_kg), '', ''],
            [
              'tongue, of the whole',
              tonguePercent(trailer),
              `${100 * TONGUE_BAND.low} to ${100 * TONGUE_BAND.high} %`,
              'common practice, no source',
            ],
          ]
        : [],
    align: ['left', 'right', 'right', 'left'],
  };
}

/** What the trailer carries empty, loaded and after a cook; rows for what differs. */
export function towingData({ cases }: Towing, system: UnitSystem): TableData {
  const say = sayIn(system);
  return {
    head: ['', 'all', 'axles', 'tongue', 'of the whole', ''],
    rows: cases.map(({ name, mass_kg, trailer, steady }) => [
      name,
      say('mass', mass_kg),
      say('mass', trailer.axleLoad_kg),
      say('mass', trailer.tongueLoad_kg),
      tonguePercent(trailer),
      steady ? 'steady' : trailer.tongueShare < TONGUE_BAND.low ? 'too light' : 'too heavy',
    ]),
    align: ['left', 'right', 'right', 'right', 'right', 'left'],
  };
}

/** Where axle or pit should stand for the usual tongue load in every case. */
export function towingWords(towing: Towing): string {
  const { cases, axle } = towing;
  const room = cases.every(({ steady }) => steady) ? ` The axle could move ${moveWords(axle!)}.` : '';
  return `${towingVerdict(towing)}${room}`;
}

/** The same without the room that is left where all stands right. */
function towingVerdict({ cases, axle, pit }: Towing): string {
  const band = `${100 * TONGUE_BAND.low} to ${100 * TONGUE_BAND.high} % on the tongue`;
  const every = cases.length > 1 ? ' in every case' : '';
  if (cases.every(({ steady }) => steady)) {
    return `${band}${every}: axle and pit stand right.`;
  }
  if (axle && pit) return `For ${band}${every} move the axle ${moveWords(axle)}, or the pit ${moveWords(pit)}.`;
  const each = cases.map((one) => `${one.name}, the axle ${moveWords(one.axle)}`);
  return `No place of axle or pit gives ${band}${every}: ${each.join('; ')}. Carry wood and food over the axle.`;
}
