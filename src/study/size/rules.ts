import type { Design } from '../../design/design.js';
import { geometryOf } from '../../design/geometryOf.js';

/** A rule of thumb beside what the design comes to. It never decides anything. */
export interface RuleOfThumb {
  words: string;
  value: number;
  /** what is said in the trade */
  said: string;
}

/** Ratios that the trade goes by, from memory: common practice, no source. */
export function rulesOfThumb(design: Design): RuleOfThumb[] {
  const { parts, stacks } = geometryOf(design);
  const part = (name: string) => parts.find((each) => each.name === name);
  const cooking = (part('chamber')?.gasVolume ?? 0) + (part('upright')?.gasVolume ?? 0);
  const firebox = part('firebox')!;
  const stackArea = stacks.reduce((sum, { flowArea }) => sum + flowArea, 0);
  const intakes = design.firebox.intakes.reduce((sum, { count, area }) => sum + count * area, 0);
  return [
    { words: 'firebox volume over cooking volume', value: firebox.gasVolume / cooking, said: 'about a third' },
    { words: 'throat over firebox section', value: design.throat.area / firebox.section, said: 'a quarter to a third' },
    { words: 'intakes, all open, over stack area', value: intakes / stackArea, said: 'half to equal' },
  ];
}
