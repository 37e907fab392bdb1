/** Edits that touch more than one field of a design file. */
import type { Design, PartName } from '../design/design.js';
import { format, formatPlate, parseQuantity } from '../units/index.js';
import type { DesignText, FieldPath } from './designText.js';

/** A thickness as text that reads back as it is, in any steel: a fraction where it is one, else millimetres. */
function plateText(thickness: number): string {
  const stock = formatPlate(thickness);
  const read = parseQuantity('plate', stock);
  return read.ok && !read.gauge && Math.abs(read.si - thickness) < 1e-9
    ? stock
    : `${Number((thickness * 1000).toPrecision(9))} mm`;
}

/** A length as text that reads back as it is. */
function lengthText(length: number): string {
  const shop = format('length', length);
  const read = parseQuantity('length', shop);
  return read.ok && Math.abs(read.si - length) < 1e-9 ? shop : `${Number((length * 1000).toPrecision(9))} mm`;
}

/**
 * Sets a diameter. Where the old one named a pipe and so its wall, the wall is written out first, so that another diameter
 * keeps it.
 *
 * @param wallKey the field that holds the wall: plate of a part, wall of a stack
 */
export function setPipeSize(
  text: DesignText,
  part: FieldPath,
  wallKey: 'plate' | 'wall',
  value: string,
  wall: number | undefined,
): void {
  const read = parseQuantity('length', value);
  const named = read.ok && read.pipe?.wall !== undefined;
  if (!named && wall !== undefined && !text.has([...part, wallKey])) text.set([...part, wallKey], plateText(wall));
  text.set([...part, 'diameter'], value);
}

/** Round to square and back: a square of the same width, a round of the same width. */
export function changeShape(text: DesignText, name: 'firebox' | 'chamber', shape: string, design: Design): void {
  const part = design[name];
  if (!part || part.shape === shape) return;
  const written = text.get([name, shape === 'square' ? 'diameter' : 'width']);
  const plain = written !== undefined && !/pipe/i.test(written) ? written : lengthText(part.width);
  if (!text.has([name, 'plate'])) text.set([name, 'plate'], plateText(part.plate));
  text.set([name, 'shape'], shape);
  for (const key of ['diameter', 'width', 'height']) text.remove([name, key]);
  for (const key of shape === 'square' ? ['width', 'height'] : ['diameter']) text.set([name, key], plain);
}

/** Sets a part's plate: a door of the same plate goes with it, and a pipe becomes a shell of its outside diameter. */
export function setPlate(text: DesignText, name: PartName, value: string, design: Design): void {
  const part = design[name];
  const door: FieldPath = [name, 'door', 'plate'];
  const diameter = text.get([name, 'diameter']);
  const pipe = diameter === undefined ? undefined : parseQuantity('length', diameter);
  if (part?.door && text.has(door) && Math.abs(part.door.plate - part.plate) < 1e-6) text.set(door, value);
  if (part && pipe?.ok && pipe.pipe?.wall !== undefined) text.set([name, 'diameter'], lengthText(part.width));
  text.set([name, 'plate'], value);
}
