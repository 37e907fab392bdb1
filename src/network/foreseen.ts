import type { LuSolver } from '../solve/linear.js';
import type { Balances, Demand } from './balances.js';
import type { Model } from './model.js';
import { OUTDOORS } from './types.js';

/** How much hotter a layer is than the one below it, so that gas sinks along the walls of all [K]. */
const HOTTER = 40;

/**
 * Show the solver every entry that the matrix of a network may ever have, so that one order of elimination does for all
 * of them: those of a burning pit with hot gas above cold, and what comes and goes as flows turn and by differences.
 *
 * @param lu its matrix is left empty
 * @param burning a guess at a burning pit, by its fire [W]
 */
export function foresee(balances: Balances, lu: LuSolver, burning: (heat: number) => Float64Array): void {
  const { model } = balances;
  const x = burning(1000);
  for (let i = 0; i < model.differential; i++) x[i] += i % 7;
  for (let z = 0; z < model.zoneCount; z++) {
    for (let below = model.under[z]; below >= 0; below = model.under[below]) x[model.gas + z] += HOTTER;
    x[model.fuel + z] = 0.01;
  }
  x[model.gas + model.network.fire.zone] += 400;
  const demand: Demand =
    model.stemCount > 0 ? { mode: 'hold', target: x[0] } : { mode: 'release', heat: x[model.fire] };
  balances.evaluate(x, demand);
  balances.jacobian(x, demand, lu.matrix, 1, 1);
  lu.foresee();
  lu.clear();
  // a fire that is given, and one that has no more air than it needs
  lu.matrix[model.fire * model.size + model.fire] = 1;
  lu.matrix[model.fire * model.size + model.fuel + model.network.fire.zone] = 1;
  for (let z = 0; z < model.zoneCount; z++) {
    lu.matrix[model.surfaceOf[z] * model.size + model.gas + z] = 1;
    lu.matrix[model.surfaceOf[z] * model.size + model.fuel + z] = 1;
  }
  // a jet joins its layers in ways that come and go
  for (const { zones, jets, fire } of model.columns) {
    if (fire)
      for (const row of zones) {
        for (const column of zones) join(model, lu, row, column);
        for (const balance of [model.gas, model.fuel, model.pressure])
          lu.matrix[(balance + row) * model.size + model.fire] = 1;
      }
    for (const { source } of jets) {
      for (const row of zones) for (const column of [...zones, source]) join(model, lu, row, column);
    }
  }
  flowsEitherWay(model, lu);
  lu.foresee();
  lu.clear();
}

/**
 * Enter all that hangs on flows, whichever way they go: those through openings, and what gas that cools as in a pipe
 * takes along.
 */
function flowsEitherWay(model: Model, lu: LuSolver): void {
  const { gas, fuel, pressure, size, network } = model;
  const { openings, faces } = network;
  const flowsOn = openings.map(({ from, to }) => sidesUnknowns(model, [from, to]));
  const leavesOn = network.zones.map((_, z) => levelUnknowns(model, z));
  openings.forEach(({ from, to }, i) => {
    for (const z of [from, to]) {
      if (z === OUTDOORS) continue;
      leavesOn[z].push(...flowsOn[i]);
      for (const row of [gas, fuel, pressure])
        for (const unknown of flowsOn[i]) lu.matrix[(row + z) * size + unknown] = 1;
    }
  });
  for (const { zone, node } of faces) if (zone !== OUTDOORS) leavesOn[zone].push(node);
  for (const { from, zones } of model.plugFlow.ways) {
    for (const z of zones) for (const unknown of leavesOn[from]) lu.matrix[(gas + z) * size + unknown] = 1;
  }
}

/** What a flow between zones hangs on: the pressure of each, and its gas and what that stands on. */
function sidesUnknowns({ gas, fuel, pressure, lowest, under }: Model, sides: number[]): number[] {
  return sides.flatMap((side) => {
    if (side === OUTDOORS) return [];
    const unknowns = [pressure + lowest[side]];
    for (let z = side; z >= 0; z = under[z]) unknowns.push(gas + z, fuel + z);
    return unknowns;
  });
}

/** What rises from a zone or sinks into another of its column hangs on. */
function levelUnknowns({ gas, fuel, pressure, columns }: Model, zone: number): number[] {
  const { zones } = columns.find((column) => column.zones.includes(zone)) ?? { zones: [] as number[] };
  const at = zones.indexOf(zone);
  return [zone, ...zones.slice(Math.max(0, at - 1), at + 2)].flatMap((z) => [gas + z, fuel + z, pressure + z]);
}

/** Enter that the balances of a zone's gas hang on the gas of another. */
function join({ gas, fuel, pressure, size }: Model, lu: LuSolver, row: number, column: number): void {
  for (const balance of [gas, fuel, pressure]) {
    for (const unknown of [gas, fuel, pressure]) lu.matrix[(balance + row) * size + unknown + column] = 1;
  }
}
