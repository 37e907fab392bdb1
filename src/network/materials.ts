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

/** Heat content of a node at a temperature [J], from an arbitrary datum that is the same at every temperature. */
export function heatContent(node: ThermalNode, temperature: number): number {
  if (node.material === 'carbon') return node.mass * steelEnthalpy(temperature);
  if (node.material === 'stainless') return node.mass * stainlessEnthalpy(temperature);
  if (node.material === 'table') return node.mass * layerHeat(node.heat!, temperature);
  return node.mass * node.specificHeat * temperature;
}

/** Its slope [J/K]. */
export function heatCapacity(node: ThermalNode, temperature: number): number {
  if (node.material === 'carbon') return node.mass * steelSpecificHeat(temperature);
  if (node.material === 'stainless') return node.mass * stainlessSpecificHeat(temperature);
  if (node.material === 'table') return node.mass * layerSpecificHeat(node.heat!, temperature);
  return node.mass * node.specificHeat;
}

/** Conductance of a link at the mean temperature of its ends [W/K]. */
export function conductance(link: ThermalLink, mean: number): number {
  const k = link.conductivity;
  if (k === 'carbon') return link.factor * steelConductivity(mean);
  if (k === 'stainless') return link.factor * stainlessConductivity(mean);
  return link.factor * layerConductivity(k, mean);
}
