import { Balances } from '../../network/balances.js';
import { buildNetwork, DEFAULT_RESOLUTION, type Resolution } from '../../network/build.js';
import type { BuiltPit } from '../../network/cells.js';
import { Model } from '../../network/model.js';
import type { Pit } from '../../network/pit.js';
import { QuasiSteadySolver } from '../../network/quasiSteady.js';

/**
 * The same pit with something about it changed for a while: a door open, other weather, food that is not in yet; a
 * variant of it may be changed further.
 *
 * Zones and nodes stay what and where they are; only openings, areas and outdoors may change, so that the unknowns of
 * one are a first guess for the other and plates keep their temperatures from one to the other.
 *
 * @param change alters the network that is newly built from the pit's design
 * @throws RangeError when it changes the number of zones, nodes or stems
 */
export function variantOf(
  pit: Pit,
  change: (built: BuiltPit) => void,
  resolution: Resolution = DEFAULT_RESOLUTION,
): Pit {
  const { design, geometry } = pit;
  const built = buildNetwork(design, geometry, resolution);
  const changed = (each: BuiltPit) => {
    pit.changed?.(each);
    change(each);
  };
  changed(built);
  const model = new Model(built.network);
  if (model.size !== pit.model.size || model.nodeCount !== pit.model.nodeCount) {
    throw new RangeError('a variant of a pit keeps its zones, nodes and stems');
  }
  const balances = new Balances(model);
  return { design, geometry, built, model, balances, solver: new QuasiSteadySolver(balances), changed };
}
