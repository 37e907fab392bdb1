import type { Design, Firebox, HorizontalPart, PartName, Steel } from '../../design/design.js';
import { doorsOf } from '../../design/doors.js';
import { jointsOf } from '../../design/joints.js';
import { PARTS } from '../../design/stations.js';
import { isOneShell, leafWall, wallAt, type FaceName } from '../../design/walls.js';
import type { PanelSize } from '../../physics/panelBuckling.js';

/** A flat plate of a pit. What is rolled is none: a shell's own curve keeps it from buckling in and out. */
export interface Panel {
  part: PartName;
  /** the face of the part's geometry that it is, or that a door is hung in */
  face: string;
  /** of several alike, one */
  name: 'roof' | 'floor' | 'side' | 'fire end' | 'far end' | 'door';
  size: PanelSize;
  plate: number;
  steel: Steel;
  /** or lined: it takes and gives heat on one side */
  insulated: boolean;
  lined: boolean;
  /**
   * faces of the part that its edges run along, with the length of edge on each [m]; none of a door, whose rim laps
   * over
   */
  along: { face: string; edge: number }[];
  /** of a door [m]; its name where there are several */
  lap?: number;
  which?: string;
  /** from the middle of the box, of a firebox [m] */
  fire?: number;
}

type Flat = Omit<Panel, 'part' | 'plate' | 'steel' | 'insulated' | 'lined' | 'fire'>;

/**
 * Every flat plate that has outdoors on its other side, one of those that are alike; ends that another part is joined
 * to are left out.
 */
export function panelsOf(design: Design): Panel[] {
  const joined = new Set(jointsOf(design).flatMap(({ parts, faces }) => parts.map((part, i) => `${part} ${faces[i]}`)));
  return PARTS.flatMap((part): Panel[] => {
    const made = design[part];
    if (!made) return [];
    const { steel } = made;
    const own = (face: string, wall = wallAt(made, wallName(face))) => ({
      part,
      steel,
      plate: wall.plate,
      insulated: (wall.insulation ?? wall.lining) !== undefined,
      lined: wall.lining !== undefined,
    });
    const walls = part === 'upright' ? wallsOfUpright(design.upright!) : wallsOf(made as HorizontalPart);
    const there = walls.filter(({ face }) => face === 'sides' || !joined.has(`${part} ${face}`));
    const panels = [
      ...there.map((flat) => ({ ...own(flat.face), ...flat })),
      ...doorsOf(design, part).flatMap((door) => {
        const leaf = leafOf(design, part, door);
        if (!leaf) return [];
        const wall = leafWall(made, door, wallName(leaf.face));
        const which = door.name === '' ? {} : { which: door.name };
        return [{ ...own(leaf.face, wall), plate: door.plate, ...leaf, ...which }];
      }),
    ];
    return part === 'firebox'
      ? panels.map((panel) => (panel.lined ? panel : { ...panel, fire: fromFire(design.firebox, panel.face) }))
      : panels;
  });
}

/** A face of the geometry as a design file names it. */
function wallName(face: string): FaceName {
  return face === 'farEnd' ? 'stackEnd' : (face as FaceName);
}

/**
 * From the fire to a face [m]; it burns in the middle of the box or on its grate, under which ash keeps it off the
 * floor.
 */
function fromFire({ length, width, height, grate }: Firebox, face: string): number | undefined {
  if (face === 'sides') return width / 2;
  if (grate && face === 'floor') return undefined;
  if (grate && face === 'roof') return height - grate.height;
  return face === 'roof' || face === 'floor' ? height / 2 : length / 2;
}

function wallsOf(part: HorizontalPart): Flat[] {
  const { shape, width, height, length, heads = 'flat' } = part;
  if (shape === 'round') {
    // a head bears by its curve
    if (heads !== 'flat') return [];
    const shell = isOneShell(part) ? ['shell'] : ['roof', 'sides', 'floor'];
    const along = shell.map((face) => ({ face, edge: (Math.PI * width) / shell.length }));
    const size = { diameter: width };
    return [
      { face: 'fireEnd', name: 'fire end', size, along },
      { face: 'farEnd', name: 'far end', size, along },
    ];
  }
  const ends = (edge: number) => ['fireEnd', 'farEnd'].map((face) => ({ face, edge }));
  const level = { size: { a: length, b: width }, along: [{ face: 'sides', edge: 2 * length }, ...ends(width)] };
  const around = [
    { face: 'roof', edge: width },
    { face: 'floor', edge: width },
    { face: 'sides', edge: 2 * height },
  ];
  return [
    { face: 'roof', name: 'roof', ...level },
    { face: 'floor', name: 'floor', ...level },
    {
      face: 'sides',
      name: 'side',
      size: { a: length, b: height },
      along: [{ face: 'roof', edge: length }, { face: 'floor', edge: length }, ...ends(height)],
    },
    { face: 'fireEnd', name: 'fire end', size: { a: width, b: height }, along: around },
    { face: 'farEnd', name: 'far end', size: { a: width, b: height }, along: around },
  ];
}

/** Of its walls the wider. */
function wallsOfUpright({ width, depth, height }: NonNullable<Design['upright']>): Flat[] {
  const wide = Math.max(width, depth);
  const level = { size: { a: width, b: depth }, along: [{ face: 'sides', edge: 2 * (width + depth) }] };
  return [
    { face: 'roof', name: 'roof', ...level },
    { face: 'floor', name: 'floor', ...level },
    {
      face: 'sides',
      name: 'side',
      size: { a: height, b: wide },
      along: [
        { face: 'sides', edge: 2 * height },
        { face: 'roof', edge: wide },
        { face: 'floor', edge: wide },
      ],
    },
  ];
}

/** A door's leaf, lap and all. On a round chamber it is rolled like the shell, and no flat plate. */
function leafOf(
  { chamber }: Design,
  part: PartName,
  { width, height, lap }: { width: number; height: number; lap: number },
): Flat | undefined {
  if (part === 'chamber' && chamber?.shape === 'round') return undefined;
  const face = part === 'firebox' ? 'fireEnd' : 'sides';
  return { face, name: 'door', size: { a: width + 2 * lap, b: height + 2 * lap }, along: [], lap };
}
