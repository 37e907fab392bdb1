import type { Design } from '../../design/design.js';
import type { RefinedRun, Refinement } from '../../study/estimate/refine.js';
import { restsOn } from '../../words/restsOn.js';
import { table } from './table.js';
import { format, type UnitSystem } from '../../units/index.js';
import { paragraph } from './paragraphs.js';

/** A refinement study as text: what more cells and tighter time steps change. */
export function refineText(design: Design, { cells, steps, firebox }: Refinement, units: UnitSystem): string {
  const measured = restsOn(design, units);
  const head = ['', 'hold fire', 'spread', 'gauge', 'soaked', 'change of gauge / soaked', 'steps', 'imbalance'];
  const row = (run: RefinedRun, base: RefinedRun): string[] => [
    run.label,
    format('power', run.fire_W, units),
    format('temperatureDifference', run.spread_K, units),
    minutes(run.gauge_s),
    minutes(run.soaked_s),
    run === base ? '-' : `${change(run.gauge_s, base.gauge_s)} / ${change(run.soaked_s, base.soaked_s)}`,
    String(run.steps),
    run.energyError.toExponential(0),
  ];
  const rows = (runs: RefinedRun[]) => {
    const base = runs.find((run) => run.label === 'as computed')!;
    return table(
      head,
      runs.map((run) => row(run, base)),
    );
  };
  return [
    `${design.name}: how much hangs on how finely it is computed`,
    ...(measured === null ? [] : [paragraph(measured)]),
    '',
    'More cells (chamber, upright and stack alike); an estimate is made with the first row.',
    rows(cells),
    '',
    'Time steps: the error that each may make, doubled and halved.',
    rows(steps),
    '',
    'Layers in the firebox, where an estimate has one mixed gas. Measured rooms with a fire stand in layers; what mixing may cost.',
    rows(firebox),
    '',
  ].join('\n');
}

function minutes(seconds: number | null): string {
  return seconds === null ? 'never' : `${(seconds / 60).toFixed(2)} min`;
}

function change(value: number | null, base: number | null): string {
  if (value === null || base === null) return '-';
  return `${(100 * (value / base - 1)).toFixed(2)} %`;
}
