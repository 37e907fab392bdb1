/** The wind that a pit feels, where the file gives it at the pit or at a weather station. */
import { windProfile } from '../physics/windProfile.js';
import type { Design } from './design.js';

type Windy = Pick<Design, 'site' | 'chamber' | 'upright'>;

/** Height at which a station's wind is taken [m]: the middle of the chamber, of the upright where there is none. */
export function windHeight({ chamber, upright }: Windy): number {
  return (chamber ?? upright)!.centre;
}

/** Wind at the pit [m/s]. */
export function windAtPit(design: Windy): number {
  const { wind, windAt, terrain } = design.site;
  return windAt === 'station' ? wind * windProfile(windHeight(design), terrain!) : wind;
}
