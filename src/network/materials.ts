import { layerConductivity, layerHeat, layerSpecificHeat, type ConductivityTable } from '../physics/insulation.js';
import {
  stainlessConductivity,
  stainlessEnthalpy,
  stainlessSpecificHeat,
  steelConductivity,
  steelEnthalpy,
  steelSpecificHeat,
} from '../physics/steel.js';
import type { Steel } from '../physics/steel.js';
import type { NodeMaterial, ThermalLink, ThermalNode } from './types.js';

/** Is it a steel, whose properties go with its temperature? */
export function isSteel(material: NodeMaterial | ConductivityTable): material is Steel {
  return material === 'carbon' || material === 'stainless';
}

/** Heat that a node takes up per kelvin [J/K]. */
export function heatCapacity(node: ThermalNode, temperature: number): number {
  if (node.material === 'carbon') return node.mass * steelSpecificHeat(temperature);
  if (node.material === 'stainless') return node.mass * stainlessSpecificHeat(temperature);
  if (node.material === 'table') return node.mass * layerSpecificHeat(node.heat!, temperature);
  return node.mass * node.specificHeat;
}

/** Heat contents of nodes, reckoned in a pass for each material. */
export class HeatContents {
  /** nodes by material */
  private readonly carbon: Int32Array;
  private readonly stainless: Int32Array;
  private readonly layers: Int32Array;
  private readonly plain: Int32Array;
  /** of each node [kg]; of those of one specific heat times that [J/K] */
  private readonly mass: Float64Array;

  constructor(private readonly nodes: readonly ThermalNode[]) {
    const of = (material: NodeMaterial) => Int32Array.from(nodes.keys()).filter((i) => nodes[i].material === material);
    this.carbon = of('carbon');
    this.stainless = of('stainless');
    this.layers = of('table');
    this.plain = of('constant');
    this.mass = Float64Array.from(nodes, ({ mass }) => mass);
    for (const i of this.plain) this.mass[i] *= nodes[i].specificHeat;
  }

  /** At the temperatures x [J], each from an arbitrary datum that is the same at every temperature. */
  evaluate(x: Float64Array, out: Float64Array): void {
    const { carbon, stainless, layers, plain, mass, nodes } = this;
    for (let k = 0; k < carbon.length; k++) out[carbon[k]] = mass[carbon[k]] * steelEnthalpy(x[carbon[k]]);
    for (let k = 0; k < stainless.length; k++)
      out[stainless[k]] = mass[stainless[k]] * stainlessEnthalpy(x[stainless[k]]);
    for (let k = 0; k < layers.length; k++)
      out[layers[k]] = mass[layers[k]] * layerHeat(nodes[layers[k]].heat!, x[layers[k]]);
    for (let k = 0; k < plain.length; k++) out[plain[k]] = mass[plain[k]] * x[plain[k]];
  }
}

/** Conductance of a link at the mean temperature of its ends [W/K]. */
export function conductance(link: ThermalLink, mean: number): number {
  const k = link.conductivity;
  if (k === 'carbon') return link.factor * steelConductivity(mean);
  if (k === 'stainless') return link.factor * stainlessConductivity(mean);
  return link.factor * layerConductivity(k, mean);
}
