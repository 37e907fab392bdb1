/** Edits that touch more than one field of a design file. */
import type { Design, PartName } from '../design/design.js';
import { stepsOf, type Path } from '../design/path.js';
import { changeTree } from '../design/vary.js';
import { format, formatPlate, parseQuantity } from '../units/index.js';
import type { DesignText } from './designText.js';

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
 * Sets a diameter. Where the old one named a pipe and so its wall, the wall is written out first, so that another
 * diameter keeps it.
 *
 * @param wallKey the field that holds the wall: plate of a part, wall of a stack
 */
export function setPipeSize(
  text: DesignText,
  part: Path,
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

/** What a part is wrapped in when the page first wraps it: the one with printed values for hot plate. */
const USUAL_INSULATION = 'ceramic fibre';

/** Sets how much is around a part. */
export function wrapPart(text: DesignText, part: string, thickness: string): void {
  if (!text.has([part, 'insulation'])) text.set([part, 'insulation', 'material'], USUAL_INSULATION);
  text.set([part, 'insulation', 'thickness'], thickness);
}

/**
 * Sets a part's plate with all that goes with it where a comparison varies it: its doors and faces, and the size of a
 * pipe.
 */
export function setPlate(text: DesignText, part: PartName, value: string): void {
  const plate = { path: `${part}.plate`, value };
  const made = changeTree(text.tree(), plate);
  for (const change of [plate, ...('problem' in made ? [] : made.also)]) text.set(stepsOf(change.path), change.value);
}
