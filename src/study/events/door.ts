import type { Design, PartName } from '../../design/design.js';
import { doorsOf, leafName, type PlacedDoor } from '../../design/doors.js';
import { gaugePlace } from '../../design/places.js';
import type { BuiltPit, Cells } from '../../network/cells.js';
import { coverage } from '../../network/doorGaps.js';
import { OUTDOORS, type Network, type NetworkFace } from '../../network/types.js';

/** A door's hole where the file gives none, as shares of the part: estimates. */
const USUAL: Record<PartName, { wide: number; high: number }> = {
  firebox: { wide: 0.6, high: 0.6 },
  chamber: { wide: 0.6, high: 0.45 },
  upright: { wide: 0.8, high: 0.7 },
};
/** Discharge coefficient of a doorway (estimate, spread 0.55-0.70). */
const DISCHARGE = 0.62;

/** The hole that an open door leaves. */
export interface Doorway {
  part: PartName;
  /** [m] */
  width: number;
  /** straight up and down [m] */
  height: number;
  /** height of its middle above the ground [m] */
  centre: number;
  /** of several doors which one, and where its middle is along the part */
  name?: string;
  along?: number;
  share?: number;
  /** the file gives no door, so that a usual one is taken */
  assumed: boolean;
}

/**
 * The door a cook opens: that of the firebox, or of the part in which the gauge sits, of several there the one nearest
 * to it. On a round chamber a door's height is measured along the shell; h of it round the radius r stand 2 r sin(h / 2
 * r) high. One door counts as centred on the part (estimate).
 */
export function doorwayOf(design: Design, which: 'gauge' | 'firebox' = 'gauge'): Doorway {
  const gauge = gaugePlace(design);
  const name = which === 'gauge' ? gauge.part : 'firebox';
  const doors = doorsOf(design, name);
  if (doors.length > 0) {
    const long = name === 'chamber' ? design.chamber!.length : 0;
    // of a firebox the largest is the one that wood goes in by
    const off = ({ along, centre, width, straight }: PlacedDoor) =>
      which === 'firebox'
        ? -width * straight
        : Math.hypot((along - gauge.along) * long, name === 'upright' ? centre - gauge.height : 0);
    const {
      width,
      straight,
      centre,
      along,
      share,
      name: own,
    } = doors.reduce((a, b) => (off(b) < off(a) - 1e-9 ? b : a));
    const one = doors.length > 1 ? { name: own, along, share } : {};
    return { part: name, width, height: straight, centre, assumed: false, ...one };
  }
  const { centre, width, height } = design[name]!;
  const { wide, high } = USUAL[name];
  const across = name === 'chamber' ? design.chamber!.length : width;
  return { part: name, width: wide * across, height: high * height, centre, assumed: true };
}

/**
 * Open that door in a network: a tall opening between each cell that it reaches and outdoors, through which gas goes
 * both ways, gas and walls see what stands outdoors, and in a firebox the fire does. The leaf's inside stands in the
 * cold meanwhile.
 */
export function openDoor(design: Design, which: 'gauge' | 'firebox' = 'gauge'): (built: BuiltPit) => void {
  return (built) => {
    const doorway = doorwayOf(design, which);
    const { part, width, height, centre, along, share } = doorway;
    const cells: Cells = built[part]!;
    const { network } = built;
    const { zones, openings, windows, fire } = network;
    const lying = cells.geometry.axis === 'horizontal';
    for (const from of cells.zones) {
      const column = cells.columns.findIndex((each) => each.includes(from));
      const across = lying ? width * coverage(cells, { along, share }, column) : width;
      const low = Math.max(centre - height / 2, zones[from].floor);
      const high = Math.min(centre + height / 2, zones[from].roof);
      if (high <= low || across <= 0) continue;
      const area = across * (high - low);
      openings.push({
        name: `${part} door`,
        role: 'doorway',
        from,
        to: OUTDOORS,
        area,
        discharge: DISCHARGE,
        centre: 0.5 * (low + high),
        extent: high - low,
        windPressure: 0,
        sees: true,
      });
      windows.push({ a: from, b: OUTDOORS, area });
      if (from === fire.zone) fire.outArea += area;
      swingOut(network, from, doorway, area);
    }
  };
}

/**
 * A leaf that is a plate of its own turns its inside to the outdoors; of one that is not, so much of the shell about it
 * does as the hole takes.
 */
function swingOut({ faces, nodes }: Network, zone: number, { part, name = '', height }: Doorway, area: number): void {
  const plateOf = ({ node }: NetworkFace) => nodes[nodes[node].lines ?? node];
  const walls = faces.filter((face) => {
    const { part: of, station } = plateOf(face);
    return face.zone === zone && of === part && station !== undefined && face.shape !== 'up' && face.shape !== 'down';
  });
  const leaf = walls.filter((face) => plateOf(face).face === leafName({ name }));
  const round = walls.filter(({ shape }) => shape === 'horizontalCylinder');
  const flat = walls.filter(({ shape }) => shape === 'vertical');
  const shell = part === 'firebox' || round.length === 0 ? flat : round;
  const turned = leaf.length > 0 ? leaf : shell;
  const whole = turned.reduce((sum, face) => sum + face.area, 0);
  const share = leaf.length > 0 ? 1 : Math.min(1, area / whole);
  for (const face of turned) {
    const out = share * face.area;
    face.area -= out;
    faces.push({ ...face, zone: OUTDOORS, area: out, shape: 'vertical', length: height, windLength: height });
  }
}
