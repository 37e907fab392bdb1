/** What is warned of materials: plates too thick for one temperature, coats, insulation and linings too hot. */
import { FINISHES, INSULATIONS, LININGS } from '../../design/catalog/index.js';
import type { Insulation } from '../../design/design.js';
import { OUTDOORS, type ThermalNode } from '../../network/types.js';
import { amount, told } from '../../units/index.js';
import { BIOT_LIMIT } from './biot.js';
import { liningStates } from './linings.js';
import type { Pit } from '../../network/pit.js';
import type { Warning } from './result.js';

/** Plates too thick for one temperature, paint and insulation above what they stand; at the hottest state x. */
export function materialWarnings(pit: Pit, x: Float64Array, biot: Float64Array): Warning[] {
  const { network } = pit.model;
  const out: Warning[] = [];
  biot.forEach((value, i) => {
    if (value <= BIOT_LIMIT) return;
    out.push({
      code: 'biot-above-limit',
      message: `the plate counts as one temperature through its thickness, and is too thick for that (Biot number ${value.toPrecision(2)}): its hot face runs a little hotter than told`,
      where: network.nodes[i].name,
      value,
      limits: { high: BIOT_LIMIT, unit: '-', source: 'lumped-capacitance rule, Incropera & DeWitt ch. 5' },
    });
  });
  for (const { part, finish, surface } of coatings(pit, x)) {
    const limit = FINISHES[finish]?.maxTemperature;
    if (limit !== undefined && surface > limit) {
      out.push({
        code: 'paint-above-limit',
        message: told`the outside of the ${part} reaches ${amount('temperature', surface)}, more than ${finish} stands (${amount('temperature', limit)}): leave it bare or use a coating made for it`,
        where: part,
        value: surface,
        limits: { high: limit, unit: 'K', source: 'common practice, no source' },
      });
    }
  }
  for (const { part, material, plate } of wrappings(pit, x)) {
    const row = INSULATIONS[material];
    if (plate <= row.maxTemperature) continue;
    out.push({
      code: 'insulation-above-limit',
      message: told`the plate under the ${material} of the ${part} reaches ${amount('temperature', plate)}, more than it stands (${amount('temperature', row.maxTemperature)})`,
      where: part,
      value: plate,
      limits: { high: row.maxTemperature, unit: 'K', source: row.source },
    });
  }
  for (const { part, material, hot_K } of liningStates(pit, x)) {
    const row = LININGS[material];
    if (hot_K <= row.maxTemperature) continue;
    out.push({
      code: 'lining-above-limit',
      message: told`the ${material} in the ${part} reaches ${amount('temperature', hot_K)} on its hot face, more than it stands (${amount('temperature', row.maxTemperature)}): line it with what stands more, or burn less`,
      where: part,
      value: hot_K,
      limits: { high: row.maxTemperature, unit: 'K', source: row.source },
    });
  }
  return out;
}

/** A wall of a part; of a stack no face. */
interface PartWall {
  part: string;
  face?: string;
  finish: string;
  insulation?: Insulation;
}

/** Walls of a pit; stacks count as one, as the first of them is. */
function walls({ design, geometry }: Pit): PartWall[] {
  const [stack] = design.stacks;
  return [
    ...geometry.parts.flatMap(({ name, faces }) =>
      faces.map((face) => ({ part: name, face: face.name, ...face.wall })),
    ),
    ...(stack ? [{ part: 'stack', finish: stack.finish, insulation: stack.insulation }] : []),
  ];
}

const isOf = (node: ThermalNode, { part, face }: PartWall) => node.part === part && node.face === face;

/** What each finish of each part reaches at its hottest [K]. */
function coatings(pit: Pit, x: Float64Array): { part: string; finish: string; surface: number }[] {
  const { faces, nodes } = pit.model.network;
  return hottestOf(
    walls(pit),
    ({ finish }) => finish,
    (wall) => faces.flatMap(({ zone, node }) => (zone === OUTDOORS && isOf(nodes[node], wall) ? [x[node]] : [])),
  ).map(({ part, kind, hottest }) => ({ part, finish: kind, surface: hottest }));
}

/** What the plate under each insulation of each part reaches at its hottest [K]. */
function wrappings(pit: Pit, x: Float64Array): { part: string; material: string; plate: number }[] {
  const { nodes } = pit.model.network;
  const wrapped = walls(pit).filter(({ insulation }) => insulation !== undefined && insulation.thickness > 0);
  return hottestOf(
    wrapped,
    ({ insulation }) => insulation!.material,
    (wall) => nodes.flatMap((node, i) => (node.thickness > 0 && isOf(node, wall) ? [x[i]] : [])),
  ).map(({ part, kind, hottest }) => ({ part, material: kind, plate: hottest }));
}

function hottestOf(
  some: PartWall[],
  kindOf: (wall: PartWall) => string,
  temperatures: (wall: PartWall) => number[],
): { part: string; kind: string; hottest: number }[] {
  const found = new Map<string, { part: string; kind: string; hottest: number }>();
  for (const wall of some) {
    const [part, kind] = [wall.part, kindOf(wall)];
    const key = `${part} ${kind}`;
    const hottest = Math.max(found.get(key)?.hottest ?? 0, ...temperatures(wall));
    found.set(key, { part, kind, hottest });
  }
  return [...found.values()];
}
