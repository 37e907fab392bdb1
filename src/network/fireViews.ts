/** What the fire burns in and shines on. */
import type { Network } from './types.js';

/** Zones of the space that the fire burns in: one, or the layers of a column. */
export function fireZones({ columns, fire }: Network): number[] {
  return columns.find(({ zones }) => zones.includes(fire.zone))?.zones ?? [fire.zone];
}

/**
 * Share of the fire's radiation that each face takes: by area in the fire's zone, the throat counted as a face whose
 * share goes on to the groups of zones that it is seen from, by area in each. Of an opening outdoors the share is lost.
 */
export function fireShares(network: Network): Float64Array {
  const { faces, fire } = network;
  const views = fireViews(network);
  const own = fireZones(network);
  const shares = Float64Array.from(faces, (f) => (own.includes(f.zone) ? f.area / views : 0));
  for (const { zones, share } of fire.seen) {
    const area = areaOf(network, zones);
    faces.forEach((f, i) => {
      if (zones.includes(f.zone)) shares[i] += (share * (f.area / area) * fire.throatArea) / views;
    });
  }
  return shares;
}

/** All that the fire shines on, walls and openings [m2]. */
export function fireViews(network: Network): number {
  const { seen, throatArea, outArea } = network.fire;
  return areaOf(network, fireZones(network)) + (seen.length > 0 ? throatArea : 0) + outArea;
}

function areaOf({ faces }: Network, zones: number[]): number {
  return faces.reduce((sum, f) => sum + (zones.includes(f.zone) ? f.area : 0), 0);
}
