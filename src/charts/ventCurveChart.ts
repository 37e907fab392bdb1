import type { ChartConfiguration } from 'chart.js';
import type { EstimateResult } from '../study/estimate/result.js';
import type { VentCurve } from '../study/air/ventCurve.js';
import { roundTicks } from '../draw/ticks.js';
import { COLOURS } from '../draw/theme.js';
import { systemOf, type UnitChoice } from '../units/choice.js';
import { convert, format } from '../units/index.js';
import { axis, twinAxes } from './axes.js';
import { bandAreas } from './bands.js';
import { baseOptions } from './base.js';
import { markLines } from './markLines.js';

interface Told {
  name: string;
  /** what stands before the air in the subtitle */
  of: string;
  target: number;
  /** share at which the intakes hold it; null: none does */
  holds: number | null;
  units?: UnitChoice;
}

/** The vents in use of a result that has followed them; null where it has not, or no draft settles. */
export function ventsChart(
  { ventCurve, vents, design }: EstimateResult,
  name: string,
  units: UnitChoice = 'both',
): ChartConfiguration<'line'> | null {
  if (!ventCurve) return null;
  return ventCurveChart(ventCurve, { name, of: '', target: design.fire.target, holds: vents?.open ?? null, units });
}

/** Where the thermometer settles against how far the intakes are open: the curve a cook uses. */
export function ventCurveChart(
  vents: VentCurve,
  { name, of, target, holds, units = 'both' }: Told,
): ChartConfiguration<'line'> | null {
  const system = systemOf(units);
  const degrees = (kelvin: number) => convert('temperature', kelvin, system);
  const there = vents.open
    .map((_, i) => i)
    .filter((i) => vents.thermometer_K[i] !== null && vents.leanest_K[i] !== null && vents.richest_K[i] !== null);
  if (there.length < 2) return null;
  const x = there.map((i) => 100 * vents.open[i]);
  const kelvins = there.flatMap((i) => [vents.thermometer_K[i]!, vents.leanest_K[i]!, vents.richest_K[i]!]);
  const range = { low: Math.min(...kelvins, target), high: Math.max(...kelvins, target) };
  const temperature = twinAxes('Thermometer', 'temperature', range, { units });
  const { likely, low, high } = vents.ratios;
  const base = baseOptions(
    `${name}: what the vents do`,
    `${of}wood enough on the bed, burning at ${likely} times the air it needs (band: ${low} to ${high} times)`,
  );
  return {
    type: 'line',
    data: {
      datasets: [
        {
          label: 'thermometer',
          data: there.map((i, at) => ({ x: x[at], y: degrees(vents.thermometer_K[i]!) })),
          borderColor: COLOURS.blue,
          borderWidth: 3,
          pointRadius: 0,
        },
      ],
    },
    plugins: [
      bandAreas([
        {
          dataset: 0,
          x,
          low: there.map((i) => degrees(Math.min(vents.leanest_K[i]!, vents.richest_K[i]!))),
          high: there.map((i) => degrees(Math.max(vents.leanest_K[i]!, vents.richest_K[i]!))),
          colour: COLOURS.blue,
        },
      ]),
      markLines([
        {
          axis: 'y',
          value: degrees(target),
          text: `target ${format('temperature', target, system)}`,
          dash: [10, 4],
        },
        ...(holds === null
          ? []
          : [
              {
                axis: 'x' as const,
                value: 100 * holds,
                text: `holds at ${Math.round(100 * holds)} %`,
                dash: [3, 3],
              },
            ]),
      ]),
    ],
    options: {
      ...base,
      parsing: false,
      scales: {
        x: axis('bottom', 'Intakes open [%]', roundTicks(0, 100, 10), { min: 0, max: 100 }),
        y: temperature.main,
        ...temperature.beside,
      },
    } as ChartConfiguration<'line'>['options'],
  };
}
