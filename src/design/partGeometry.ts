/**
 * A part's own shape: its faces before cut-outs, its inside section, its volume.
 *
 * Sizes are outside sizes. Steel is the outer volume less the inner one, exactly: end plates (roof and floor of an
 * upright) run to the outside, the shell stands between them, or between the seams of heads. A lining is the volume
 * inside the steel less that of the gas, exactly: on the sides it stands between the ends' steel, on roof and floor
 * between that of the sides, on the ends within all of them.
 */
import type { HorizontalPart, PartName, Upright } from './design.js';
import { OpenFace } from './faces.js';
import { headOf } from './heads.js';
import type { Face, PartGeometry } from './geometry.js';
import { depthOf, endToEnd, insideOf, isOneShell, wallAt, type FaceName } from './walls.js';

/** A part under construction. */
export interface OpenPart extends Omit<PartGeometry, 'faces' | 'steelArea' | 'steelMass' | 'liningMass'> {
  open: OpenFace[];
}

/** Length in the convection relations of an upright disc, over its diameter: a square of the same area, sqrt(pi/4). */
const DISC_LENGTH = Math.sqrt(Math.PI / 4);

/** The thirds of a round part's girth: from where to where each reaches, as shares of the part's height. */
const THIRDS = {
  roof: { low: 0.75, high: 1 },
  sides: { low: 0.25, high: 0.75 },
  floor: { low: 0, high: 0.25 },
} as const;

/** Area over perimeter of a rectangle [m]: the length for plates that face up or down. */
function plateLength(a: number, b: number): number {
  return (a * b) / (2 * (a + b));
}

/** Firebox or chamber with nothing cut out of it yet: shell or sides, and its two ends. */
export function horizontalPart(name: PartName, part: HorizontalPart): OpenPart {
  return part.shape === 'round' ? roundPart(name, part) : boxPart(name, part);
}

/** Ends of a horizontal part, the far one under the name that joints know it by. */
const ENDS = [
  ['fireEnd', 'fireEnd'],
  ['farEnd', 'stackEnd'],
] as const;

/** Length between the ends' steel, or between the seams of heads [m]. */
function betweenEnds(part: HorizontalPart): number {
  return endToEnd(part, (name) => wallAt(part, name).plate);
}

function roundPart(name: PartName, part: HorizontalPart): OpenPart {
  const { width: diameter, length, centre, heads: kind = 'flat', flange = 0 } = part;
  const { length: inner, floor, roof } = insideOf(part);
  const between = betweenEnds(part);
  const headed = kind !== 'flat';
  const thirds: [string, FaceName, number, Face['reach']?][] = isOneShell(part)
    ? [['shell', 'sides', 1]]
    : (['roof', 'sides', 'floor'] as const).map((face) => [face, face, 1 / 3, THIRDS[face]]);
  const disc = (Math.PI / 4) * diameter ** 2;
  const shell = thirds.map(([face, of, share, reach]) => {
    const wall = wallAt(part, of);
    const bore = diameter - 2 * depthOf(wall);
    const steelBore = diameter - 2 * wall.plate;
    const area = (across: number) => share * (Math.PI / 4) * across ** 2;
    return {
      section: area(bore),
      perimeter: share * Math.PI * bore,
      face: new OpenFace(
        face,
        'horizontalCylinder',
        'along',
        share * Math.PI * diameter * (headed ? inner : length),
        share * Math.PI * bore * inner,
        share * Math.PI * (diameter - wall.plate) * wall.plate * between,
        wall,
        diameter,
        reach ? centre + (0.5 * (reach.low + reach.high) - 0.5) * diameter : centre,
        wall.lining ? (area(steelBore) - area(bore)) * between : 0,
        reach,
      ),
    };
  });
  const section = shell.reduce((sum, each) => sum + each.section, 0);
  const ends = ENDS.map(([place, of]) => {
    const wall = wallAt(part, of);
    const { plate, lining: { thickness: lining } = { thickness: 0 } } = wall;
    const head = kind === 'flat' ? undefined : headOf(kind, { diameter, plate, lining });
    const [outside, inside, steel, lined] = head
      ? [head.outsideArea, head.insideArea, head.steelVolume, head.liningVolume]
      : [disc, section, disc * plate, section * lining];
    const at = DISC_LENGTH * diameter;
    const face = new OpenFace(place, 'vertical', place, outside, inside, steel, wall, at, centre, lined);
    face.beyond = head ? flange + head.middle : 0;
    return { face, gas: head?.gasVolume ?? 0 };
  });
  const heads = { fireEnd: ends[0].gas, farEnd: ends[1].gas };
  return {
    name,
    axis: 'horizontal',
    open: [...shell.map(({ face }) => face), ...ends.map(({ face }) => face)],
    section,
    perimeter: shell.reduce((sum, { perimeter }) => sum + perimeter, 0),
    length: inner,
    floor,
    roof,
    centre,
    gasVolume: section * inner + heads.fireEnd + heads.farEnd,
    ...(headed ? { heads } : {}),
  };
}

function boxPart(name: PartName, part: HorizontalPart): OpenPart {
  const { width, height, length, centre } = part;
  const { width: w, height: h, length: inner, floor, roof } = insideOf(part);
  const between = betweenEnds(part);
  const sides = wallAt(part, 'sides');
  const steelHeight = height - (wallAt(part, 'roof').plate + wallAt(part, 'floor').plate);
  const flat = (face: 'roof' | 'floor', at: number): OpenFace => {
    const wall = wallAt(part, face);
    return new OpenFace(
      face,
      face === 'roof' ? 'up' : 'down',
      'along',
      width * length,
      w * inner,
      width * between * wall.plate,
      wall,
      plateLength(width, length),
      at,
      w * between * (wall.lining?.thickness ?? 0),
    );
  };
  return {
    name,
    axis: 'horizontal',
    open: [
      flat('roof', centre + height / 2),
      flat('floor', centre - height / 2),
      new OpenFace(
        'sides',
        'vertical',
        'along',
        2 * height * length,
        2 * h * inner,
        2 * steelHeight * between * sides.plate,
        sides,
        height,
        centre,
        2 * steelHeight * between * (sides.lining?.thickness ?? 0),
      ),
      ...ENDS.map(([place, of]) => {
        const wall = wallAt(part, of);
        const [outer, lining] = [width * height, w * h * (wall.lining?.thickness ?? 0)];
        return new OpenFace(place, 'vertical', place, outer, w * h, outer * wall.plate, wall, height, centre, lining);
      }),
    ],
    section: w * h,
    perimeter: 2 * (w + h),
    length: inner,
    floor,
    roof,
    centre,
    gasVolume: w * h * inner,
  };
}

/** The upright with nothing cut out of it yet: sides, roof and floor. */
export function uprightPart(part: Upright): OpenPart {
  const { width, depth, height, centre } = part;
  const { width: w, length: d, height: inner, floor, roof } = insideOf(part);
  const sides = wallAt(part, 'sides');
  const steelHeight = height - (wallAt(part, 'roof').plate + wallAt(part, 'floor').plate);
  const steelDepth = depth - 2 * sides.plate;
  const flat = (face: 'roof' | 'floor', at: number): OpenFace => {
    const wall = wallAt(part, face);
    return new OpenFace(
      face,
      face === 'roof' ? 'up' : 'down',
      face === 'roof' ? 'top' : 'bottom',
      width * depth,
      w * d,
      width * depth * wall.plate,
      wall,
      plateLength(width, depth),
      at,
      w * d * (wall.lining?.thickness ?? 0),
    );
  };
  const lined = ((width - 2 * sides.plate) * steelDepth - w * d) * steelHeight;
  return {
    name: 'upright',
    axis: 'vertical',
    open: [
      new OpenFace(
        'sides',
        'vertical',
        'along',
        2 * (width + depth) * height,
        2 * (w + d) * inner,
        2 * (width + steelDepth) * sides.plate * steelHeight,
        sides,
        height,
        centre,
        sides.lining ? lined : 0,
      ),
      flat('roof', centre + height / 2),
      flat('floor', centre - height / 2),
    ],
    section: w * d,
    perimeter: 2 * (w + d),
    length: inner,
    floor,
    roof,
    centre,
    gasVolume: w * d * inner,
  };
}
