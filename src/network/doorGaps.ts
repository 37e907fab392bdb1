/** Leaks at doors, and the share of a door's height that a layer covers. */
import type { Design } from '../design/design.js';
import { doorLabel, doorsOf, type PlacedDoor } from '../design/doors.js';
import { ashDoorCentre, fireGrateOf } from '../design/fireGrate.js';
import { PARTS } from '../design/stations.js';
import { cellAtHeight, type BuiltPit, type Cells } from './cells.js';
import { OUTDOORS } from './types.js';
import type { Add } from './openingCuts.js';

/** A door gap counts at this share of the part's height above and below its middle. */
const GAP_HEIGHT = 0.35;

/** The leak of the ash door, under the grate. */
function addAshGap(built: BuiltPit, design: Design, add: Add): void {
  const { ashDoor } = design.firebox;
  if (!ashDoor) return;
  const centre = fireGrateOf(design.firebox)?.height ?? ashDoorCentre(design.firebox);
  const from = cellAtHeight(built.network, built.firebox.zones, centre);
  add({ name: 'ash door gap', role: 'gap', from, to: OUTDOORS, area: ashDoor.gap, centre });
}

/**
 * Door gaps: half above and half below each part's middle, shared equally by its cells; of several doors each at its
 * own edges.
 */
export function addGaps(built: BuiltPit, design: Design, add: Add): void {
  for (const name of PARTS) {
    const cells = built[name];
    const part = design[name];
    if (!cells || !part) continue;
    if (name === 'firebox') addAshGap(built, design, add);
    if (part.doors) for (const door of doorsOf(design, name)) addGap(built, design, cells, door, add);
    else addGap(built, design, cells, { name: '', gap: part.doorGap }, add);
  }
}

/** Half of a leak at the top and half at the bottom of a door, in the cells that it reaches over. */
function addGap(
  built: BuiltPit,
  design: Design,
  cells: Cells,
  door: Pick<PlacedDoor, 'name' | 'gap'> & Partial<PlacedDoor>,
  add: Add,
): void {
  const { zones } = built.network;
  const { geometry, part } = cells;
  const whole = geometry.roof - geometry.floor;
  const { centre = geometry.centre, straight = 2 * GAP_HEIGHT * whole } = door;
  const reach = 0.5 * Math.min(straight, whole);
  const floor = Math.min(...cells.zones.map((zone) => zones[zone].floor));
  const upright = geometry.axis === 'vertical';
  const grate = part === 'firebox' ? fireGrateOf(design.firebox) : undefined;
  for (const [where, z] of [
    ['low', Math.max(centre - reach, floor)],
    ['high', centre + reach],
  ] as const) {
    const stations = upright ? [...new Set(cells.zones.map((zone) => zones[zone].station))] : [];
    const places = upright
      ? stations.map((station) => cells.zones.filter((each) => zones[each].station === station))
      : cells.columns;
    // a door of its own height leaks where it is; the leak of a whole part all over it
    const there = upright && door.straight !== undefined ? [cells.zones] : places;
    const shares = there.map((_, i) => (upright ? 1 / there.length : coverage(cells, door, i)));
    there.forEach((place, i) => {
      const zone = cellAtHeight(built.network, place, z);
      const gap = `${doorLabel(part, door.name)} gap ${where}`;
      add({
        ...(there.length > 1 ? { name: `${gap} at ${zones[zone].station}`, gap } : { name: gap }),
        role: 'gap',
        from: zone,
        to: OUTDOORS,
        area: 0.5 * door.gap * shares[i],
        centre: Math.max(z, grate?.height ?? z),
      });
    });
  }
}

/**
 * Share of a door's width that reaches over a cell of a lying part; without its place the door of a whole part, all
 * over it.
 */
export function coverage(
  { columns }: Cells,
  { along = 0.5, share = 1 }: Partial<Pick<PlacedDoor, 'along' | 'share'>>,
  i: number,
): number {
  const each = 1 / columns.length;
  const half = 0.5 * Math.min(1, share);
  const [from, to] = [Math.max(0, along - half), Math.min(1, along + half)];
  return Math.max(0, Math.min(to, (i + 1) * each) - Math.max(from, i * each)) / (to - from);
}
