import type { Trailer } from '../../design/design.js';

/** What stands on two supports [kg]. */
export interface TrailerLoads {
  axleLoad_kg: number;
  /** on coupler and hitch; below 0 the trailer tips backwards */
  tongueLoad_kg: number;
  /** tongue load over the weight of all */
  tongueShare: number;
  /** rating less load [kg]; below 0 it is exceeded */
  axleMargin_kg: number;
  hitchMargin_kg: number;
}

/** A tongue's share of the whole, in words; what rounds to nothing has no sign. */
export function tonguePercent({ tongueShare }: Pick<TrailerLoads, 'tongueShare'>): string {
  return `${((Math.round(1000 * tongueShare) || 0) / 10).toFixed(1)} %`;
}

/** What axle and tongue carry of a weight that acts at a position. */
export function trailerLoads(
  { axle, hitch, axleRating, hitchRating }: Pick<Trailer, 'axle' | 'hitch' | 'axleRating' | 'hitchRating'>,
  total: number,
  position: number,
): TrailerLoads {
  const tongueShare = (axle - position) / (axle - hitch);
  const tongue = total * tongueShare;
  return {
    axleLoad_kg: total - tongue,
    tongueLoad_kg: tongue,
    tongueShare,
    axleMargin_kg: axleRating - (total - tongue),
    hitchMargin_kg: hitchRating - Math.abs(tongue),
  };
}
