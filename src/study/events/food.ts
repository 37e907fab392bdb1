import type { Content, Design, Food } from '../../design/design.js';
import { partOfStation } from '../../design/stations.js';
import { finishZones } from '../../network/build.js';
import type { BuiltPit } from '../../network/cells.js';
import { doorwayOf } from './door.js';

/** Share of a surface that stands for none: the balances divide by areas. */
const NEXT_TO_NOTHING = 1e-9;

/** How the body of a load is called in the network. */
const bodyName = (i: number): string => `load ${i + 1}`;

/** The design with its cook's food among the contents of the parts it lies in. */
export function withFood(design: Design): Design {
  const load = design.cook?.load ?? [];
  const usual = doorwayOf(design).part;
  const inPart = (part: 'firebox' | 'chamber' | 'upright') =>
    load.flatMap((food, i): Content[] =>
      (food.station ? partOfStation(food.station) : usual) === part ? [bodyOf(food, i)] : [],
    );
  const { firebox, chamber, upright } = design;
  return {
    ...design,
    firebox: { ...firebox, contents: [...firebox.contents, ...inPart('firebox')] },
    ...(chamber ? { chamber: { ...chamber, contents: [...chamber.contents, ...inPart('chamber')] } } : {}),
    ...(upright ? { upright: { ...upright, contents: [...upright.contents, ...inPart('upright')] } } : {}),
  };
}

function bodyOf({ mass, area, station }: Food, i: number): Content {
  return { name: bodyName(i), material: 'food', mass, area, ...(station ? { station } : {}) };
}

/** Nodes of load i in a network built from a design with food. */
export function nodesOfFood({ network }: BuiltPit, i: number): number[] {
  return network.nodes.flatMap(({ name, material }, n) => (name === bodyName(i) && material === 'constant' ? [n] : []));
}

/** The network before loading: the food's bodies are there, but nothing reaches them. */
export function leaveFoodOut(count: number): (built: BuiltPit) => void {
  return (built) => {
    const { faces } = built.network;
    const bodies = new Set(Array.from({ length: count }, (_, i) => nodesOfFood(built, i)).flat());
    for (const face of faces) if (bodies.has(face.node)) face.area *= NEXT_TO_NOTHING;
    finishZones(built.network);
  };
}
