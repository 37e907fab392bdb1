import type { HorizontalPart, Insulation, Upright } from '../../design/design.js';
import { faceWords } from '../../design/plates.js';
import { FACES, wallAt, type FaceName } from '../../design/walls.js';
import { format, formatPlate } from '../../units/index.js';
import { listed } from '../../units/listed.js';
import { plainText } from '../../words/plainText.js';

/**
 * What heads a part has and what covers it, then its faces of other plate or covered otherwise and its doors, a line
 * each.
 */
export function coverWords(part: HorizontalPart | Upright): string[] {
  const { insulation, lining, shield, door, doors = [] } = part;
  const faces = 'depth' in part ? FACES.slice(0, 3) : FACES;
  const others = faces.flatMap((face) => {
    const wall = wallAt(part, face);
    const plate = wall.plate === part.plate ? [] : [formatPlate(wall.plate)];
    const own = wall.insulation?.thickness === (insulation?.thickness || undefined) ? [] : [wrapWords(wall.insulation)];
    const words = [...plate, ...own];
    return words.length > 0 ? [`${faceWords(face)} ${words.join(', ')}`] : [];
  });
  const leaves = [...(door ? [{ ...door, name: '' }] : []), ...doors].flatMap(({ name, insulation: own }) => {
    if (own === undefined) return [];
    return [`door ${plainText(name, 24)} ${wrapWords(own === 'none' ? undefined : own)}`.replace('  ', ' ')];
  });
  return [
    ...('heads' in part && part.heads && part.heads !== 'flat' ? [`${part.heads} heads`] : []),
    ...(insulation && insulation.thickness > 0 ? [wrapWords(insulation)] : []),
    ...(lining && lining.thickness > 0
      ? [`${format('length', lining.thickness)} ${lining.material}${placeWords(lining, faces)}`]
      : []),
    ...(shield ? [`shield ${format('length', shield.gap)} off${placeWords(shield, faces)}`] : []),
    ...others,
    ...leaves,
  ];
}

function wrapWords(insulation: Insulation | undefined): string {
  return insulation && insulation.thickness > 0 ? `${format('length', insulation.thickness)} insulation` : 'bare';
}

/** Which faces a lining or a shield is on, where it is not on all. */
function placeWords(layer: { faces: string[] }, all: readonly FaceName[]): string {
  const own = all.filter((face) => layer.faces.includes(face));
  return own.length === all.length ? '' : ` on ${listed(own.map(faceWords))}`;
}
