import type { LuSolver } from '../solve/linear.js';
import type { Balances, Demand } from './balances.js';
import type { Model } from './model.js';

/**
 * Show the solver every entry that the matrix of a network may ever have, so that one order of elimination does for all of them: a
 * pit with hot gas above cold, one nearly mixed and one with cold gas above hot, for every stream runs in one; and what comes and
 * goes by differences.
 *
 * @param lu its matrix is left empty
 * @param burning a guess at a burning pit, by its fire [W]
 */
export function foresee(balances: Balances, lu: LuSolver, burning: (heat: number) => Float64Array): void {
  const { model } = balances;
  for (const over of [40, 2, -40]) {
    const x = burning(1000);
    for (let i = 0; i < model.differential; i++) x[i] += i % 7;
    for (let z = 0; z < model.zoneCount; z++) {
      for (let below = model.under[z]; below >= 0; below = model.under[below]) x[model.gas + z] += over;
      x[model.fuel + z] = 0.01;
    }
    x[model.gas + model.network.fire.zone] += 400;
    const demand: Demand =
      model.stemCount > 0 ? { mode: 'hold', target: x[0] } : { mode: 'release', heat: x[model.fire] };
    balances.evaluate(x, demand);
    balances.jacobian(x, demand, lu.matrix, 1, 1);
    lu.foresee();
  }
  lu.matrix.fill(0);
  // a fire that is given, and one that has no more air than it needs
  lu.matrix[model.fire * model.size + model.fire] = 1;
  lu.matrix[model.fire * model.size + model.fuel + model.network.fire.zone] = 1;
  for (let z = 0; z < model.zoneCount; z++) {
    lu.matrix[(model.surfaceNode + z) * model.size + model.gas + z] = 1;
    lu.matrix[(model.surfaceNode + z) * model.size + model.fuel + z] = 1;
  }
  // a jet joins its layers in ways that come and go
  for (const { zones, jets } of model.columns) {
    for (const { source } of jets) {
      for (const row of zones) for (const column of [...zones, source]) join(model, lu, row, column);
    }
  }
  lu.foresee();
  lu.matrix.fill(0);
}

/** Enter that the balances of a zone's gas hang on the gas of another. */
function join({ gas, fuel, pressure, size }: Model, lu: LuSolver, row: number, column: number): void {
  for (const balance of [gas, fuel, pressure]) {
    for (const unknown of [gas, fuel, pressure]) lu.matrix[(balance + row) * size + unknown + column] = 1;
  }
}
