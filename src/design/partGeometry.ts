/**
 * A part's own shape: its faces before cut-outs, its inside section, its volume.
 *
 * Sizes are outside sizes. Steel is the outer volume less the inner one, exactly: end plates (roof and floor of an upright)
 * run to the outside, the shell stands between them.
 */
import type { HorizontalPart, PartName, Upright } from './design.js';
import { OpenFace } from './faces.js';
import { headOf } from './heads.js';
import type { PartGeometry } from './geometry.js';

/** A part under construction. */
export interface OpenPart extends Omit<PartGeometry, 'faces' | 'steelArea' | 'steelMass'> {
  open: OpenFace[];
}

/** Length in the convection relations of an upright disc, over its diameter: a square of the same area, sqrt(pi/4). */
const DISC_LENGTH = Math.sqrt(Math.PI / 4);

/** Area over perimeter of a rectangle [m]: the length for plates that face up or down. */
function plateLength(a: number, b: number): number {
  return (a * b) / (2 * (a + b));
}

export function horizontalPart(name: PartName, part: HorizontalPart): OpenPart {
  return part.shape === 'round' ? roundPart(name, part) : boxPart(name, part);
}

/** How far a part's inside reaches along it [m]: between flat ends, or between the seams of heads and their straight flanges. */
export function innerLength({ length, plate, heads = 'flat', flange = 0 }: HorizontalPart): number {
  return heads === 'flat' ? length - 2 * plate : length + 2 * flange;
}

function roundPart(name: PartName, part: HorizontalPart): OpenPart {
  const { width: diameter, length, plate, centre, heads = 'flat', flange = 0 } = part;
  const bore = diameter - 2 * plate;
  const inner = innerLength(part);
  const disc = (Math.PI / 4) * diameter ** 2;
  const section = (Math.PI / 4) * bore ** 2;
  const head = heads === 'flat' ? undefined : headOf(heads, { diameter, plate });
  const end = (place: 'fireEnd' | 'farEnd'): OpenFace => {
    const [outside, inside, steel] = head
      ? [head.outsideArea, head.insideArea, head.steelVolume]
      : [disc, section, disc * plate];
    const face = new OpenFace(place, 'vertical', place, outside, inside, steel, plate, DISC_LENGTH * diameter, centre);
    face.beyond = head ? flange + head.middle : 0;
    return face;
  };
  return {
    name,
    axis: 'horizontal',
    open: [
      new OpenFace(
        'shell',
        'horizontalCylinder',
        'along',
        Math.PI * diameter * (head ? inner : length),
        Math.PI * bore * inner,
        Math.PI * (diameter - plate) * plate * inner,
        plate,
        diameter,
        centre,
      ),
      end('fireEnd'),
      end('farEnd'),
    ],
    section,
    perimeter: Math.PI * bore,
    length: inner,
    floor: centre - bore / 2,
    roof: centre + bore / 2,
    centre,
    gasVolume: section * inner + (head ? 2 * head.gasVolume : 0),
    ...(head ? { heads: { fireEnd: head.gasVolume, farEnd: head.gasVolume } } : {}),
  };
}

function boxPart(name: PartName, { width, height, length, plate, centre }: HorizontalPart): OpenPart {
  const [w, h, inner] = [width - 2 * plate, height - 2 * plate, length - 2 * plate];
  const end = (place: 'fireEnd' | 'farEnd'): OpenFace =>
    new OpenFace(place, 'vertical', place, width * height, w * h, width * height * plate, plate, height, centre);
  const flat = (face: 'roof' | 'floor', at: number): OpenFace =>
    new OpenFace(
      face,
      face === 'roof' ? 'up' : 'down',
      'along',
      width * length,
      w * inner,
      width * inner * plate,
      plate,
      plateLength(width, length),
      at,
    );
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
        2 * h * inner * plate,
        plate,
        height,
        centre,
      ),
      end('fireEnd'),
      end('farEnd'),
    ],
    section: w * h,
    perimeter: 2 * (w + h),
    length: inner,
    floor: centre - h / 2,
    roof: centre + h / 2,
    centre,
    gasVolume: w * h * inner,
  };
}

export function uprightPart({ width, depth, height, plate, centre }: Upright): OpenPart {
  const [w, d, inner] = [width - 2 * plate, depth - 2 * plate, height - 2 * plate];
  const flat = (face: 'roof' | 'floor', at: number): OpenFace =>
    new OpenFace(
      face,
      face === 'roof' ? 'up' : 'down',
      face === 'roof' ? 'top' : 'bottom',
      width * depth,
      w * d,
      width * depth * plate,
      plate,
      plateLength(width, depth),
      at,
    );
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
        2 * (width + d) * plate * inner,
        plate,
        height,
        centre,
      ),
      flat('roof', centre + height / 2),
      flat('floor', centre - height / 2),
    ],
    section: w * d,
    perimeter: 2 * (w + d),
    length: inner,
    floor: centre - inner / 2,
    roof: centre + inner / 2,
    centre,
    gasVolume: w * d * inner,
  };
}
