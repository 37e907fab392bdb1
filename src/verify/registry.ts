/** All checks by name: what a line of a case file may call. */
import { mayBeLeftOut, type Check, type Input, type Inputs } from './check.js';
import { carryChecks } from './checks/carry.js';
import { catalogChecks } from './checks/catalog.js';
import { conductionChecks } from './checks/conduction.js';
import { convectionChecks } from './checks/convection.js';
import { convectionExampleChecks } from './checks/convectionExamples.js';
import { flowChecks } from './checks/flow.js';
import { corridorChecks } from './checks/corridor.js';
import { enclosureChecks } from './checks/enclosure.js';
import { layerChecks } from './checks/layers.js';
import { gasChecks } from './checks/gas.js';
import { headChecks } from './checks/heads.js';
import { integratedChecks } from './checks/integrated.js';
import { networkChecks } from './checks/network.js';
import { panelChecks } from './checks/panel.js';
import { radiationChecks } from './checks/radiation.js';
import { roomsChecks } from './checks/rooms.js';
import { siteChecks } from './checks/site.js';
import { steelChecks } from './checks/steel.js';
import { thermometerChecks } from './checks/thermometer.js';
import { wetChecks } from './checks/wet.js';
import { wholeModelChecks } from './checks/wholeModel.js';
import { woodChecks } from './checks/wood.js';
import { zoneRadiationChecks } from './checks/zoneRadiation.js';
import { siUnit } from './quantities.js';

/** By topic, in the order of the list that `--list` prints. */
const TOPICS: Readonly<Record<string, Readonly<Record<string, Check>>>> = {
  'air, gas and atmosphere': gasChecks,
  steel: steelChecks,
  'flat panels': panelChecks,
  convection: convectionChecks,
  'convection, worked': convectionExampleChecks,
  radiation: radiationChecks,
  'radiation inside a zone': zoneRadiationChecks,
  'evaporation and rain': wetChecks,
  'fins, layers, lumped bodies': conductionChecks,
  thermometer: thermometerChecks,
  'friction, openings, draft': flowChecks,
  'layers, pipes, the fire through the throat': layerChecks,
  'stepped through time': integratedChecks,
  'flow network': networkChecks,
  'whole model: an enclosure with vents and a fire': enclosureChecks,
  'whole model: rooms of any number, with a fire in one': roomsChecks,
  'whole model: a corridor behind a burn room': corridorChecks,
  'whole model: plate, stack, body': wholeModelChecks,
  wood: woodChecks,
  'site and burns': siteChecks,
  catalog: catalogChecks,
  'weights, trailer, handles': carryChecks,
  'heads of tanks': headChecks,
};

function collect(): ReadonlyMap<string, Check> {
  const all = new Map<string, Check>();
  for (const [topic, checks] of Object.entries(TOPICS)) {
    for (const [name, check] of Object.entries(checks)) {
      if (all.has(name)) throw new Error(`two checks are named ${name}; the second is of topic ${topic}`);
      all.set(name, check);
    }
  }
  return all;
}

/** Every check, by the name that cases give. */
export const REGISTRY: ReadonlyMap<string, Check> = collect();

/** Readable list of the checks with their inputs, units and results, for `--list`. */
export function listChecks(): string {
  const lines: string[] = [];
  for (const [topic, checks] of Object.entries(TOPICS)) {
    lines.push(`${topic}`, '');
    for (const [name, check] of Object.entries(checks)) {
      lines.push(`  ${name} -> ${siUnit(check.result)}: ${check.about}`);
      lines.push(...listInputs(check.inputs, '      '));
    }
    lines.push('');
  }
  return lines.join('\n');
}

function listInputs(inputs: Inputs, indent: string): string[] {
  return Object.entries(inputs).flatMap(([name, spec]) => {
    const optional = mayBeLeftOut(spec) ? '?' : '';
    const own = `${indent}${name}${optional} [${formOf(spec)}] ${spec.about}`;
    return spec.type === 'records' ? [own, ...listInputs(spec.fields, `${indent}    `)] : [own];
  });
}

function formOf(spec: Input): string {
  switch (spec.type) {
    case 'choice':
      return spec.options.join(' | ');
    case 'records':
      return 'list of objects';
    case 'number':
      return siUnit(spec.kind);
    case 'list':
      return `${siUnit(spec.kind)}, list`;
    case 'table':
      return `${siUnit(spec.kind)}, list of lists`;
  }
}
