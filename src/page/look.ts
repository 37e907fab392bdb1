/**
 * The two looks of the page: paper by day, blueprint by night. The charts' own colours become custom properties of the
 * page.
 */
import { COLOURS, FAINT_INK, GRID, INK, PAPER } from '../draw/theme.js';
import type { Paint } from '../draw/drawing.js';

const PROPERTIES: Record<string, string> = {
  [INK]: 'var(--ink)',
  [FAINT_INK]: 'var(--faint)',
  [GRID]: 'var(--grid)',
  [PAPER]: 'var(--sheet)',
  ...Object.fromEntries(Object.entries(COLOURS).map(([name, colour]) => [colour, `var(--line-${name})`])),
};

/** A colour of a chart as this page's property for it; others stay. */
export function pageColour(colour: string): string {
  return PROPERTIES[colour] ?? colour;
}

/** What the roles of a drawing look like on this page. */
export const PAGE_PAINT: Paint = {
  ink: 'var(--ink)',
  faint: 'var(--faint)',
  paper: 'var(--sheet)',
  shade: 'var(--shade)',
  heat: (share) => `var(--heat-${heatStep(share)})`,
  onHeat: (share) => `var(--on-heat-${heatStep(share)})`,
};

/** Shades that the temperature scale is cut into. */
export const HEAT_STEPS = 24;

function heatStep(share: number): number {
  return Math.min(HEAT_STEPS, Math.max(0, Math.round(share * HEAT_STEPS)));
}
