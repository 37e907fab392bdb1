import type { Design } from '../design/design.js';
import type { EstimateUsed } from './result.js';

/** The inputs that no correlation settles, as this design uses them, each with its spread. */
export function estimatesUsed(design: Design): EstimateUsed[] {
  const { fire, estimates, firebox } = design;
  const list: EstimateUsed[] = [
    { path: 'fire.radiant', value: fire.radiant, low: 0.2, high: 0.45, unit: '-' },
    { path: 'fire.soot', value: fire.soot, low: 0, high: 1.2, unit: '1/m' },
    { path: 'fire.rise', value: fire.rise, low: 300, high: 1200, unit: 's' },
    { path: 'innerConvection', value: design.innerConvection, low: 0.8, high: 2, unit: '-' },
    { path: 'estimates.oxygenUse', value: estimates.oxygenUse, low: 0.8, high: 0.95, unit: '-' },
    { path: 'estimates.stemFill', value: estimates.stemFill, low: 0.2, high: 1, unit: '-' },
    { path: 'throat.discharge', value: design.throat.discharge, low: 0.55, high: 0.7, unit: '-' },
  ];
  if (firebox.intakes.length > 0) {
    list.push({
      path: 'firebox.intakes.discharge',
      value: firebox.intakes[0].discharge,
      low: 0.55,
      high: 0.7,
      unit: '-',
    });
  }
  return list;
}
