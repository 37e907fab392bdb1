import type { Design } from '../design/design.js';
import type { MeasureGroup } from '../study/compare/measures.js';
import type { Quantity, QuantityName } from '../study/quantities.js';
import { headlinesOf, SPLIT_HEADLINES } from '../study/spread/headlines.js';
import type { SpreadNumber } from '../study/spread/uncertainty.js';
import { format, type FormatOptions, type UnitSystem } from '../units/index.js';
import { gaugeLabel, HEAT_LOSS_LABELS, stationLabel } from './labels.js';
import { capital } from './plainText.js';

/** What a quantity is called; `@` stands for the station, place or plate that it is of. */
interface QuantityWords {
  /** in a table whose heads say of which state */
  row: string;
  /** in a table of options (default: `row`), and away from its head (default: the same) */
  compared?: string;
  named?: string;
  /** by itself (default: `named`, and the state) */
  alone?: string;
  /** on the page, which begins it with a capital (default: `named`) */
  page?: string;
  /** to a buyer (default: `compared`) */
  buyer?: string;
}

type WordForm = keyof QuantityWords;

const WORDS: Readonly<Record<QuantityName, QuantityWords>> = {
  gauge_s: {
    row: 'first reads the target',
    alone: 'thermometer first reads the target',
    page: 'thermometer first reads the target',
  },
  soaked_s: { row: 'soaked', page: 'steel soaked', buyer: 'steel is soaked' },
  woodToGauge_kg: { row: 'wood to the first reading' },
  woodToSoaked_kg: {
    row: 'wood to soaked',
    compared: 'wood until soaked',
    alone: 'wood to soaked',
    page: 'wood to soaked',
  },
  'full.thermometer_K': { row: '@ under the full fire' },
  steel_kg: { row: 'all steel', page: 'weight of all steel' },
  lining_kg: { row: 'all lining', page: 'weight of all lining' },
  steelCost: { row: 'its steel', page: 'cost of its steel', buyer: 'cost of its steel' },
  insulationCost: { row: 'its insulation', page: 'cost of its insulation', buyer: 'cost of its insulation' },
  liningCost: { row: 'its lining', page: 'cost of its lining', buyer: 'cost of its lining' },
  buildCost: { row: 'all together', page: 'cost of all together', buyer: 'cost of steel and what covers it' },
  cookWood_kg: { row: 'wood for a cook of @' },
  cookCost: { row: 'that wood', page: 'cost of that wood', buyer: 'cost of wood for a cook of @' },
  payback: { row: 'paid back after' },
  plate_m: { row: '@', page: 'plate, @', buyer: 'plate of @' },
  fire_W: {
    row: 'fire that holds it',
    alone: 'fire that holds the target',
    page: 'fire, all of it lost again',
    buyer: 'heat lost while holding',
  },
  wood_kg_per_s: {
    row: 'wood that holds it',
    alone: 'wood that holds the target',
    page: 'wood an hour',
    buyer: 'wood while holding',
  },
  thermometer_K: { row: '@', named: 'thermometer, @' },
  steel_K: { row: '@', named: 'steel, @' },
  outside_K: { row: '@' },
  grate_K: { row: 'grate, middle', alone: 'grate, in its middle, holding', page: 'thermometer, grate' },
  endToEnd_K: { row: 'where it cooks, end to end', alone: 'hottest to coldest where it cooks, holding' },
  topToBottom_K: { row: 'grates, top to bottom' },
  racks_K: { row: 'racks, hottest to coldest' },
  hottestOutside_K: {
    row: 'hottest anywhere',
    alone: 'hottest outside, holding',
    buyer: 'hottest steel outside',
  },
  heatLoss_W: { row: '@' },
  stackBase_Pa: { row: 'draft at the stack base' },
  throat_Pa: { row: 'draft at the throat' },
  firebox_Pa: { row: 'draft in the firebox' },
  theoretical_Pa: { row: 'draft the stack could give with no flow' },
  air_kg_per_s: { row: 'air' },
  excessAirRatio: {
    row: 'air, times what the wood needs',
    compared: 'air over what wood needs',
    alone: 'air over what the wood needs, holding',
    page: 'air, times what the wood needs',
  },
  intakeVelocity_m_per_s: { row: 'speed in the intakes', page: 'speed in the vents' },
  stackVelocity_m_per_s: { row: 'speed in the stack' },
  airChanges_per_min: { row: 'gas changed, times a minute' },
  residence_s: { row: 'gas stays in the pit' },
  neutralPlane_m: { row: 'neutral plane above the ground' },
  'swing.wood_kg': { row: 'splits: weight of one' },
  'swing.period_s': { row: 'splits: one every' },
  'swing.wood_kg_per_s': { row: 'splits: wood' },
  'swing.lowest_K': { row: 'splits: lowest reading' },
  'swing.highest_K': { row: 'splits: highest reading' },
  'swing.late_K': { row: 'splits: lowest, one laid late' },
  'swing.thermometer_K': { row: 'splits: thermometer swing' },
  'swing.steel_K': { row: 'splits: steel swing' },
  'door.dip_K': { row: 'door: thermometer dip' },
  'door.recovery_s': { row: 'door: back after' },
  'gust.dip_K': { row: 'gust: thermometer dip' },
  'shower.dip_K': { row: 'shower: thermometer dip' },
  'coolDown.half_s': { row: 'fire out: half down after' },
  'coolDown.touch_s': { row: 'fire out: touch limit after' },
  'plate.overEdge_K': { row: 'flat panel: middle over edge' },
  'plate.mayBuckle_K': { row: 'flat panel: may buckle from' },
  'plate.buckles_K': { row: 'flat panel: buckles from' },
  'plate.buckling': { row: 'flat panel: share of that' },
  'plate.push_m': { row: 'flat panel: gives to 50 lb', buyer: 'softest flat panel, pushed with 50 lb, gives' },
  'plate.corner_m': { row: 'door corner: gives to 20 lb' },
  'plate.scaled_m': { row: 'scale under coals, 1,000 h' },
  'plate.halfGone_years': {
    row: 'years to half the plate there',
    buyer: 'years to half the firebox plate, under coals',
  },
  'plate.strength_share': { row: 'strength left there' },
  'cook.wood_kg': { row: 'wood for the day' },
  'cook.inBand_share': { row: 'time within the band' },
};

/** Heads of the groups of a comparison's table. */
export const GROUP_WORDS: Record<MeasureGroup, string> = {
  plate: 'Plate',
  steel: 'Steel',
  money: 'What it costs',
  'warm-up': 'Warm-up',
  holding: 'Holding',
  losses: 'Where the heat goes',
  temperatures: 'Thermometers while holding',
  events: 'Events',
  outside: 'Hottest outside while holding',
  lasting: 'Flat, stiff, lasting',
  air: 'Air while holding',
  cook: 'The cook of the design',
};

/** What a quantity is called. */
export function wordsOf({ name, at, held }: Pick<Quantity, 'name' | 'at' | 'held'>, form: WordForm): string {
  const own = WORDS[name];
  const compared = own.compared ?? own.row;
  const named = own.named ?? compared;
  const alone = own.alone ?? (held ? `${named}, holding` : named);
  const words = { row: own.row, compared, named, alone, page: own.page ?? named, buyer: own.buyer ?? compared };
  const text = at === undefined ? words[form] : words[form].replace('@', placeOf(name, at));
  return form === 'page' ? capital(text) : text;
}

function placeOf(name: QuantityName, at: string): string {
  if (name === 'plate_m' || name === 'cookWood_kg' || name === 'cookCost') return at;
  if (name === 'heatLoss_W') return HEAT_LOSS_LABELS[at as keyof typeof HEAT_LOSS_LABELS];
  return name === 'full.thermometer_K' ? gaugeLabel(at) : stationLabel(at);
}

/** A headline number of a design by its key. */
export function headlineOf(key: string, design: Design): Quantity {
  return [...headlinesOf(design), ...SPLIT_HEADLINES].find((each) => each.key === key)!;
}

/** A headline number with its unit; 'never' where it does not exist. */
export function headlineText({ kind, unit }: Quantity, value: number | null, system: UnitSystem): string {
  if (value === null || kind === 'money' || kind === 'cooks') return 'never';
  const options: FormatOptions = {};
  if (unit[system]) options.unit = unit[system];
  if (kind === 'pressure') options.digits = 2;
  return format(kind, value, system, options);
}

/**
 * Two printed quantities as a range; a unit that both have is said once.
 *
 * @example rangeOf('13 min', '23 min') gives '13 to 23 min'
 */
export function rangeOf(low: string, high: string): string {
  const unit = (text: string) => /^-?[\d.,]+( ?[^\d.,].*)$/.exec(text)?.[1];
  const shared = unit(low);
  // of '1 h 30 min' and '2 h 30 min', or '1/4 in' and '3/4 in', the end is no unit
  const alike = shared !== undefined && shared === unit(high) && !/[ /]\d/.test(shared);
  return `${alike ? low.slice(0, -shared.length) : low} to ${high}`;
}

/** `22 to 33 min`, from a tenth of the cases to nine tenths. */
export function rangeText({ key, p10, p90 }: SpreadNumber, design: Design, system: UnitSystem): string {
  const quantity = headlineOf(key, design);
  return p10 === null ? 'never' : rangeOf(headlineText(quantity, p10, system), headlineText(quantity, p90, system));
}
