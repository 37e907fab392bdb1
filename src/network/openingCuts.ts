/** Openings that layers look through, cut where they end, and passages between cells. */
import type { Chamber } from '../design/design.js';
import { deckWidth, plateGaps } from '../design/decks.js';
import { cellAtHeight, cutsBetween, type BuiltPit } from './cells.js';
import { gapIn } from './parts.js';
import { type Network, type NetworkOpening } from './types.js';

/** Discharge coefficient of gaps, and of full cross-sections between cells (estimate, spread 0.55-0.70). */
export const DISCHARGE = 0.62;

/** Puts an opening into the network that is being built; areas in m2, heights in m. */
export type Add = (
  o: Partial<NetworkOpening> & Pick<NetworkOpening, 'name' | 'role' | 'from' | 'to' | 'area' | 'centre'>,
) => void;

/** An opening that zones of a part look through, cut where they end. */
export function addSliced(
  network: Network,
  add: Add,
  opening: Omit<Parameters<Add>[0], 'from' | 'to'> & { from: number[]; to: number[]; extent: number },
): void {
  const { from, area, centre, jet, ...rest } = opening;
  const to = sameSide(network, opening.to, centre);
  const [floor, roof] = [network.zones[to[0]].floor, network.zones[to[to.length - 1]].roof];
  const room = to.length < opening.to.length ? 2 * Math.max(0, Math.min(centre - floor, roof - centre)) : Infinity;
  const extent = Math.min(opening.extent, room);
  const cuts = cutsBetween(network, [from, to], centre - 0.5 * extent, centre + 0.5 * extent);
  for (let i = 1; i < cuts.length; i++) {
    const middle = 0.5 * (cuts[i - 1] + cuts[i]);
    const share = extent > 0 ? (cuts[i] - cuts[i - 1]) / extent : 1;
    add({
      ...rest,
      from: cellAtHeight(network, from, middle),
      to: cellAtHeight(network, to, middle),
      area: area * share,
      centre: middle,
      extent: cuts[i] - cuts[i - 1],
      ...(jet === undefined ? {} : { jet: jet * share }),
    });
  }
}

/** Of zones under and over a reverse-flow plate those on the side of a height: no opening is cut by the plate. */
function sameSide(network: Network, zones: number[], z: number): number[] {
  const at = cellAtHeight(network, zones, z);
  return zones.filter((each) => network.zones[each].under === network.zones[at].under);
}

/** Gaps in a row of plates: gas rises through each into the cells over it, a stream as wide as the plates. */
export function addPlateGaps({ network, plenum, chamber }: BuiltPit, made: Chamber, add: Add): void {
  const wide = deckWidth(made);
  plateGaps(made).forEach((gap, k) => {
    const [from] = plenum!.zones;
    chamber!.columns.forEach(([to], i) => {
      add({
        name: made.deflector ? 'past the deflector' : `gap ${k + 1} in the plates`,
        role: 'passage',
        from,
        to,
        area: gapIn(gap, i, chamber!.columns.length),
        centre: network.zones[from].roof,
        level: true,
        eitherWay: 'up',
        jet: wide,
      });
    });
  });
}

/**
 * Full cross-sections between the cells of a horizontal part: all of them together take what one opening would, where
 * gas runs along.
 */
export function addAlong(
  { zones }: Network,
  columns: number[][],
  name: string,
  add: Add,
  runs = columns[0].length > 1,
): void {
  const passages = columns.length - 1;
  const layered = columns[0].length > 1;
  for (let i = 1; i <= passages; i++) {
    columns[i].forEach((to, j) => {
      const from = columns[i - 1][j];
      const { section, centre, roof, floor } = zones[from];
      add({
        name: `${name} passage ${i}`,
        role: 'passage',
        from,
        to,
        area: section,
        centre,
        extent: roof - floor,
        discharge: runs ? DISCHARGE * Math.sqrt(passages) : DISCHARGE,
        // where gas is mixed over the height, hot gas runs along the top and cold gas back under it
        inner: layered,
        eitherWay: 'along',
      });
    });
  }
}
