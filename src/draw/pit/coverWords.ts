import type { HorizontalPart, Upright } from '../../design/design.js';
import { faceWords } from '../../design/plates.js';
import { FACES, wallAt } from '../../design/walls.js';
import { format, formatPlate } from '../../units/index.js';

/** What covers a part, and where a face is of other plate or covered otherwise, a line each. */
export function coverWords(part: HorizontalPart | Upright): string[] {
  const { insulation, lining, shield } = part;
  const faces = 'depth' in part ? FACES.slice(0, 3) : FACES;
  const others = faces.flatMap((face) => {
    const wall = wallAt(part, face);
    const plate = wall.plate === part.plate ? [] : [formatPlate(wall.plate)];
    const wrap = wall.insulation?.thickness ?? 0;
    const own =
      wrap === (insulation?.thickness ?? 0) ? [] : [wrap > 0 ? `${format('length', wrap)} insulation` : 'bare'];
    const words = [...plate, ...own];
    return words.length > 0 ? [`${faceWords(face)} ${words.join(', ')}`] : [];
  });
  return [
    ...(insulation && insulation.thickness > 0 ? [`${format('length', insulation.thickness)} insulation`] : []),
    ...(lining && lining.thickness > 0 ? [`${format('length', lining.thickness)} ${lining.material}`] : []),
    ...(shield ? [`shield ${format('length', shield.gap)} off`] : []),
    ...others,
  ];
}
