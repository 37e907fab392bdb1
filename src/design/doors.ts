/** The doors of a part, one or several: where each is, and what leaks round it. */
import type { Design, Door, HorizontalPart, PartName, Upright } from './design.js';

/** A door where it hangs on its part; lengths in m. */
export interface PlacedDoor extends Door {
  /** empty of a part's only door that bears none */
  name: string;
  /** middle, share of the part's length from the fire end; a half where the part has no such direction */
  along: number;
  /** its width over that length */
  share: number;
  /** height of its middle above the ground, and how high it stands straight up [m] */
  centre: number;
  straight: number;
  /** leak area round it [m2] */
  gap: number;
}

/** How high something h high along a shell round the radius r stands straight up: 2 r sin(h / 2 r) [m]. */
function straightHeight(part: HorizontalPart | Upright, name: PartName, height: number): number {
  if (name !== 'chamber' || !('shape' in part) || part.shape !== 'round') return height;
  const r = part.width / 2;
  return 2 * r * Math.sin(Math.min(height / (2 * r), Math.PI / 2));
}

/**
 * Doors of a part, its one door or those of its list. The leak of the part is shared out among them as the file gives
 * their gaps. Where the file doesn't say, doors of a chamber stand side by side, those of an upright or a firebox over
 * each other.
 */
export function doorsOf(design: Design, name: PartName): PlacedDoor[] {
  const part: HorizontalPart | Upright | undefined = design[name];
  if (!part) return [];
  const { door, doors = [], doorGap } = part;
  if (doors.length === 0) {
    return door ? [place(part, name, { ...door, name: '', gap: doorGap }, 0, 1)] : [];
  }
  const whole = doors.reduce((sum, { gap }) => sum + gap, 0);
  return doors.map((each, i) =>
    place(part, name, { ...each, gap: whole > 0 ? (doorGap * each.gap) / whole : 0 }, i, doors.length),
  );
}

type Loose = Door & { name: string; gap: number; along?: number; centre?: number };

function place(part: HorizontalPart | Upright, name: PartName, door: Loose, i: number, many: number): PlacedDoor {
  const middle = (i + 0.5) / many;
  const lying = name === 'chamber';
  return {
    ...door,
    along: door.along ?? (lying ? middle : 0.5),
    share: lying && 'length' in part ? door.width / part.length : 1,
    centre: door.centre ?? (lying ? part.centre : part.centre + (middle - 0.5) * part.height),
    straight: straightHeight(part, name, door.height),
  };
}

/** The name of a leaf that is a face of its own. */
export function leafName({ name }: { name: string }): string {
  return name === '' ? 'door' : `door ${name}`;
}

/** Is a face of a part's geometry the leaf of a door? */
export const isLeaf = ({ leaf }: { leaf?: true }): boolean => leaf === true;

/** `chamber door`, or one of several by its name: `chamber door left`. */
export function doorLabel(part: PartName, name: string): string {
  return name === '' ? `${part} door` : `${part} door ${name}`;
}
