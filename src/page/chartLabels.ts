import type { ChartId } from './protocol.js';

/** The charts of the page, in the order of their buttons. */
export const CHART_LABELS: Record<ChartId, string> = {
  thermometer: 'Thermometers',
  steel: 'Steel',
  gas: 'Gas',
  vents: 'Vents in use',
  loss: 'Heat loss',
  draft: 'Draft',
  options: 'Options together',
};
