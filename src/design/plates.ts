/** Which plate each part of a design is made of. */
import { formatPlate } from '../units/index.js';
import type { Design, PartName } from './design.js';
import { deckOf } from './decks.js';
import { doorLabel, doorsOf } from './doors.js';
import type { DesignWarning } from './faults.js';
import { PARTS } from './stations.js';
import { FACES, wallAt, type FaceName } from './walls.js';

/**
 * A sheet of steel by what it makes: `firebox`, `firebox roof`, `chamber door`, `chamber plate` (of a reverse flow),
 * `stack`.
 */
export interface PartPlate {
  name: string;
  /** of what it is a door, or itself */
  part: PartName | 'stack';
  /** of a face that is of another plate than its part */
  face?: FaceName;
  /** [m] */
  plate: number;
}

/** Thicknesses nearer than this are one [m]. */
const SAME = 1e-6;

/** Parts, each with its faces of another plate and its door where the design gives one, then the stacks. */
export function platesOf(design: Design): PartPlate[] {
  const several = design.stacks.length > 1;
  return [
    ...PARTS.flatMap((part): PartPlate[] => {
      const own = design[part];
      if (!own) return [];
      const deck = part === 'chamber' ? deckOf(design.chamber!) : undefined;
      return [
        { name: part, part, plate: own.plate },
        ...FACES.flatMap((face): PartPlate[] => {
          const { plate } = wallAt(own, face);
          return Math.abs(plate - own.plate) < SAME ? [] : [{ name: `${part} ${faceWords(face)}`, part, face, plate }];
        }),
        ...doorsOf(design, part).map(({ name, plate }) => ({ name: doorLabel(part, name), part, plate })),
        ...(part === 'firebox' && design.firebox.ashDoor
          ? [{ name: 'ash door', part, plate: design.firebox.ashDoor.plate }]
          : []),
        ...(deck ? [{ name: deck.name, part, plate: deck.plate }] : []),
      ];
    }),
    ...design.stacks.map(({ wall }, i): PartPlate => ({
      name: several ? `stack ${i + 1}` : 'stack',
      part: 'stack',
      plate: wall,
    })),
    ...design.stacks.flatMap(({ gather }, i): PartPlate[] =>
      gather ? [{ name: several ? `gather box ${i + 1}` : 'gather box', part: 'stack', plate: gather.plate }] : [],
    ),
  ];
}

/** `stackEnd` to `stack end`. */
export function faceWords(name: string): string {
  return name.replace(/([a-z])([A-Z])/g, (_, before: string, after: string) => `${before} ${after.toLowerCase()}`);
}

/** Parts that were drawn heavier than the lightest one and that one plate for all has made thinner. */
export function thinnedParts(drawn: Design, made: Design): DesignWarning[] {
  const lightest = Math.min(...PARTS.flatMap((part) => drawn[part]?.plate ?? []));
  return PARTS.flatMap((part): DesignWarning[] => {
    const [before, after] = [drawn[part]?.plate, made[part]?.plate];
    if (before === undefined || after === undefined) return [];
    if (before <= lightest + SAME || after >= before - SAME) return [];
    return [
      {
        code: 'heavier-part-thinned',
        message: `all.plate makes it ${formatPlate(after)}, drawn ${formatPlate(before)} and heavier than the rest: vary parts by name to leave it as it is ('chamber.plate, upright.plate = ...')`,
        where: part,
        value: after,
        limits: { low: before, unit: 'm', source: 'the design as drawn' },
      },
    ];
  });
}
