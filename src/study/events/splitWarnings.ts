import type { Warning } from '../estimate/result.js';
import type { Swing } from './swing.js';

/** What a cook has to know of his splits. */
export function splitWarnings(swing: Swing | null): Warning[] {
  if (!swing?.limitedByAir) return [];
  return [
    {
      code: 'splits-limited-by-air',
      message:
        'air holds down the flames of a fresh split, so that less heat comes of it than meant: lay on smaller splits more often, or open up',
      where: 'splits',
      value: swing.highestFire_W,
      limits: null,
    },
  ];
}
