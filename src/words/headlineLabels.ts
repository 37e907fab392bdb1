import type { GaugeStation } from '../design/design.js';
import type { SpreadNumber } from '../study/spread/uncertainty.js';
import { format, type FormatOptions, type Kind, type UnitSystem } from '../units/index.js';
import { gaugeLabel, HEAT_LOSS_LABELS, stationLabel } from './labels.js';

/** How a headline number is called and printed. */
export interface HeadlineLabel {
  text: string;
  kind: Kind;
  /** forced units, by system */
  unit?: Partial<Record<UnitSystem, string>>;
}

const FIXED: Record<string, HeadlineLabel> = {
  gauge_s: { text: 'thermometer first reads the target', kind: 'time' },
  soaked_s: { text: 'soaked', kind: 'time' },
  woodToGauge_kg: { text: 'wood to the first reading', kind: 'mass' },
  woodToSoaked_kg: { text: 'wood to soaked', kind: 'mass' },
  'hold.fire_W': { text: 'fire that holds the target', kind: 'power' },
  'hold.wood_kg_per_s': { text: 'wood that holds the target', kind: 'massFlow' },
  'hold.air_kg_per_s': { text: 'air, holding', kind: 'massFlow', unit: { shop: 'lb/h', si: 'g/s' } },
  'hold.excessAirRatio': { text: 'air over what the wood needs, holding', kind: 'number' },
  'hold.stackBase_Pa': { text: 'draft at the stack base, holding', kind: 'pressure' },
  'hold.firebox_Pa': { text: 'draft in the firebox, holding', kind: 'pressure' },
  'hold.stackVelocity_m_per_s': { text: 'speed in the stack, holding', kind: 'speed', unit: { shop: 'ft/s' } },
  'hold.endToEnd_K': { text: 'hottest to coldest cooking end, holding', kind: 'temperatureDifference' },
  'hold.hottestOutside_K': { text: 'hottest outside, holding', kind: 'temperature' },
};

/** Name and kind of a headline number. */
export function headlineLabel(key: string, gauge: GaugeStation): HeadlineLabel {
  if (key in FIXED) return FIXED[key];
  const last = key.slice(key.lastIndexOf('.') + 1);
  if (key.startsWith('hold.thermometer_K.')) {
    return { text: `thermometer, ${stationLabel(last)}, holding`, kind: 'temperature' };
  }
  if (key.startsWith('hold.heatLoss_W.')) {
    return { text: `${HEAT_LOSS_LABELS[last as keyof typeof HEAT_LOSS_LABELS]}, holding`, kind: 'power' };
  }
  return { text: `${gaugeLabel(gauge)} under the full fire`, kind: 'temperature' };
}

/** A headline number with its unit; 'never' where it does not exist. */
export function headlineText({ kind, unit }: HeadlineLabel, value: number | null, system: UnitSystem): string {
  if (value === null) return 'never';
  const options: FormatOptions = {};
  if (unit?.[system]) options.unit = unit[system];
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
export function rangeText(number: SpreadNumber, gauge: GaugeStation, system: UnitSystem): string {
  const label = headlineLabel(number.key, gauge);
  return number.p10 === null
    ? 'never'
    : rangeOf(headlineText(label, number.p10, system), headlineText(label, number.p90, system));
}
