import { middleOf } from '../../design/places.js';
import type { PlaceState, SteadyState } from './result.js';

/** What the cook steers by in a state: a station's dial, or a place of that name, of a grate its middle. */
export function gaugeReading(
  { stations, places }: Pick<SteadyState, 'stations' | 'places'>,
  gauge: string,
): number | null {
  const dial = stations.find(({ name }) => name === gauge);
  return (dial ?? middleOf<PlaceState>(places, gauge))?.thermometer_K ?? null;
}
