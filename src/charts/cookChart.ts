import type { ChartConfiguration } from 'chart.js';
import type { Design } from '../design/design.js';
import type { CookResult } from '../study/events/cook.js';
import { format } from '../units/index.js';
import type { NamedChart } from './estimateCharts.js';
import { optionCurves, optionStyle } from './optionCurves.js';
import { plainText } from '../words/plainText.js';

const LONGEST_NAME = 40;

/** A cook's day: thermometer and steel against time, with what happens marked. */
export function cookCharts(cook: CookResult, { name, fire }: Design): NamedChart[] {
  const { curve } = cook;
  const line = (label: string, kelvin: number[], style: number) => ({
    label,
    time_s: curve.time_s,
    kelvin,
    style: optionStyle(style),
  });
  const config = optionCurves({
    title: `${plainText(name, LONGEST_NAME)}: the day`,
    subtitle:
      `${format('mass', cook.wood_kg)} of wood; ${format('share', cook.inBand_share, 'shop', { digits: 2 })} of the time ` +
      `from loading to the last wood within the band`,
    quantity: 'Temperature',
    curves: [line('thermometer', curve.thermometer_K, 0), line('steel', curve.steel_K, 1)],
    level: { kelvin: fire.target, text: `target ${format('temperature', fire.target)}` },
    times: cook.marks.map(({ time_s, what }) => ({ time_s, text: what })),
  });
  return config ? [{ file: 'cook', config: config as ChartConfiguration }] : [];
}
