/**
 * What a cook makes of a pit that was estimated: how he lights it, what splits do to it, how its vents are used, and
 * whether it smokes cold.
 */
import { withBedFire } from '../air/burnsItsAir.js';
import { CLEAN_FIRE } from '../air/cleanFire.js';
import { cleanVents } from '../air/cleanHold.js';
import { ventCurve } from '../air/ventCurve.js';
import type { Further, Solution } from '../estimate/estimate.js';
import { coldSmoke } from './coldSmoke.js';
import { heldAt } from './heldPit.js';
import { litPit } from './lighting.js';
import { splitWarnings } from './splitWarnings.js';
import { splitSwing } from './swing.js';
import { turnedVents } from './ventTurn.js';

/**
 * Follow a cook in a solved pit: asked for as `estimate(design, { further: cooked })`.
 *
 * @param vented follow the vents from shut to open too
 */
export function cooked({ pit, held, full }: Solution, vented = false): Further {
  const { design } = pit;
  const at = held && heldAt(pit, held, full);
  const splits = at && splitSwing(at);
  const vents = held && cleanVents(design, held);
  return {
    result: {
      lit: at && litPit(at),
      splits,
      vents,
      ...(design.upright ? { coldSmoke: coldSmoke(design) } : {}),
      ...(vented && design.firebox.intakes.length > 0
        ? {
            ventCurve: ventCurve(withBedFire(design), CLEAN_FIRE.ratio),
            ventTurn: vents && turnedVents(withBedFire(design), vents.open),
          }
        : {}),
    },
    warnings: splitWarnings(splits),
  };
}
