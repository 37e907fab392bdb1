import { platesOf } from '../../design/plates.js';
import { costRows, costsOf } from '../costs.js';
import { held, heldAt, heldLoss, LOSSES, ofResult, plateOf, type Quantity, type ResultName } from '../quantities.js';
import type { OptionStudy } from './studyOption.js';

/** Heads under which a comparison's rows stand. */
export type MeasureGroup =
  | 'plate'
  | 'steel'
  | 'money'
  | 'warm-up'
  | 'holding'
  | 'losses'
  | 'temperatures'
  | 'outside'
  | 'events'
  | 'lasting'
  | 'air'
  | 'cook';

/** One number by which options are compared. */
export interface Measure extends Quantity {
  group: MeasureGroup;
}

/** What plate is good for beside heat. */
const LASTING = [
  'plate.overEdge_K',
  'plate.mayBuckle_K',
  'plate.buckling',
  'plate.buckles_K',
  'plate.push_m',
  'plate.corner_m',
  'plate.scaled_m',
  'plate.halfGone_years',
  'plate.strength_share',
] as const satisfies ResultName[];

/**
 * All measures by which these options can be compared, in the order of the table. What none of them has is left out.
 *
 * @param options of one comparison; stations and plates are those that any of them has
 * @param settings.cook_s how long a cook is whose wood is priced
 */
export function measuresOf(options: readonly OptionStudy[], { cook_s }: { cook_s: number }): Measure[] {
  const stations = [...new Set(options.flatMap(({ result }) => result.steady?.stations.map(({ name }) => name) ?? []))];
  const plates = new Map(options.flatMap(({ result }) => platesOf(result.design).map((each) => [each.name, each])));
  // a small loss that doubles is still small beside the fire
  const small = 0.001 * meanFire(options);
  const losses = LOSSES.map((place): Quantity => {
    const loss = heldLoss(place);
    return { ...loss, none: (value) => Math.max(loss.none(value), small), of: (study) => loss.of(study) || null };
  });
  const lining = ofResult('lining_kg');
  const groups: [MeasureGroup, Quantity[]][] = [
    ['plate', [...plates.values()].map(plateOf)],
    ['steel', [ofResult('steel_kg'), ...(options.some((option) => lining.of(option)) ? [lining] : [])]],
    ['money', costRows(costsOf(options, cook_s))],
    ['warm-up', (['gauge_s', 'soaked_s', 'woodToSoaked_kg'] as const).map(ofResult)],
    ['holding', (['fire_W', 'wood_kg_per_s'] as const).map(held)],
    ['losses', losses],
    ['temperatures', stations.map((name) => heldAt('thermometer_K', name))],
    // between different stations an evenness says nothing
    [
      'temperatures',
      [held('grate_K'), ...(alike(options) ? (['endToEnd_K', 'topToBottom_K', 'racks_K'] as const).map(held) : [])],
    ],
    [
      'events',
      (
        [
          'swing.wood_kg',
          'swing.period_s',
          'swing.lowest_K',
          'swing.highest_K',
          'swing.thermometer_K',
          'swing.late_K',
          'swing.steel_K',
          'door.dip_K',
          'door.recovery_s',
        ] as const
      ).map(ofResult),
    ],
    ['events', (['gust.dip_K', 'shower.dip_K', 'coolDown.half_s', 'coolDown.touch_s'] as const).map(ofResult)],
    ['outside', [held('hottestOutside_K'), ...stations.map((name) => heldAt('outside_K', name))]],
    ['lasting', LASTING.map(ofResult)],
    ['air', (['stackBase_Pa', 'air_kg_per_s', 'excessAirRatio'] as const).map(held)],
    ['cook', (['cook.wood_kg', 'cook.inBand_share'] as const).map(ofResult)],
  ];
  return groups
    .flatMap(([group, quantities]) => quantities.map((quantity): Measure => ({ ...quantity, group })))
    .filter(({ of }) => options.some((option) => of(option) !== null));
}

/** Have all options the same stations? */
function alike(options: readonly OptionStudy[]): boolean {
  const sets = options.flatMap(({ result }) => (result.steady ? [result.steady.stations.map(({ name }) => name)] : []));
  return new Set(sets.map((names) => names.join())).size < 2;
}

function meanFire(options: readonly OptionStudy[]): number {
  const fires = options.flatMap(({ result }) => (result.steady ? [result.steady.fire_W] : []));
  return fires.length > 0 ? fires.reduce((a, b) => a + b, 0) / fires.length : 0;
}
