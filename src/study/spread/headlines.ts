import type { Design } from '../../design/design.js';
import { stationsOf } from '../../design/sense.js';
import { fullReading, held, heldAt, heldLoss, LOSSES, ofResult, type Quantity, type StateName } from '../quantities.js';

/** How hot and how even it is where food lies. */
function cookingOf({ chamber, upright }: Design): StateName[] {
  return [
    ...(chamber ? (['grate_K'] as const) : []),
    'endToEnd_K',
    ...(chamber && chamber.grates.length > 1 ? (['topToBottom_K'] as const) : []),
    ...(chamber && upright ? (['racks_K'] as const) : []),
  ];
}

/**
 * The headline numbers of a design, in the order a builder asks: warm-up, what holds the target, the temperatures and
 * losses that go with it (but the gauge's, which is the target), and what the full fire settles at.
 */
export function headlinesOf(design: Design): Quantity[] {
  const stations = [
    ...(design.chamber ? stationsOf(design, 'chamber') : []),
    ...(design.upright ? stationsOf(design, 'upright') : []),
  ].filter((name) => name !== design.gauge);
  const places = LOSSES.filter((place) => (place !== 'chamber' && place !== 'upright') || design[place]);
  return [
    ...(['gauge_s', 'soaked_s', 'woodToGauge_kg', 'woodToSoaked_kg'] as const).map(ofResult),
    ...(['fire_W', 'wood_kg_per_s', 'air_kg_per_s', 'excessAirRatio', 'stackBase_Pa', 'firebox_Pa'] as const).map(held),
    ...(['stackVelocity_m_per_s', 'hottestOutside_K'] as const).map(held),
    ...cookingOf(design).map(held),
    ...stations.map((name) => heldAt('thermometer_K', name)),
    ...places.map(heldLoss),
    fullReading(design.gauge),
  ];
}

/** What splits make of it, where a cook was followed: as many as are followed in a spread. */
export const SPLIT_HEADLINES: readonly Quantity[] = (
  ['swing.period_s', 'swing.lowest_K', 'swing.highest_K', 'swing.late_K', 'swing.wood_kg_per_s'] as const
).map(ofResult);
