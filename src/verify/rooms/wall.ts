/** Walls of several layers as nodes, faces and links of the network. */
import { OUTDOORS, type FaceShape, type Network, type ThermalLink } from '../../network/types.js';
import { steelDensity } from '../../physics/steel.js';

/** A layer cut into slices; its conductivity may follow temperature. */
interface SolidLayer {
  type: 'solid';
  thickness: number;
  density: number;
  specificHeat: number;
  conductivity: ThermalLink['conductivity'];
  slices: number;
}

/** Plate: one temperature through its thickness. With no specific heat of its own it follows that of carbon steel. */
interface PlateLayer {
  type: 'plate';
  thickness: number;
  specificHeat?: number;
}

/** A layer of a wall: cut into slices, or of one temperature. */
export type Layer = SolidLayer | PlateLayer;

interface Wall {
  name: string;
  area: number;
  shape: FaceShape;
  /** free-convection length, and length across the wind [m] */
  length: number;
  windLength: number;
  /** from the inside outwards */
  layers: readonly Layer[];
  insideEmissivity: number;
  outsideEmissivity: number;
}

/** Nodes of a wall: its inside and outside surface, and its plate where it has one. */
export interface WallNodes {
  inside: number;
  outside: number;
  plate?: number;
}

/**
 * Add a wall of a zone, outdoors behind it.
 *
 * A layer's nodes lie on the bounds of its slices, half a slice of mass to each side, so that an exposed face has its
 * own temperature; where a plate adjoins, the plate is the node on that bound and the slice's half goes to its
 * neighbour.
 */
export function addWall(network: Network, zone: number, wall: Wall): WallNodes {
  const { nodes, faces, links } = network;
  const node = (mass: number, specificHeat: number | undefined, thickness: number): number => {
    nodes.push({
      name: wall.name,
      part: wall.name,
      mass,
      material: specificHeat === undefined ? 'carbon' : 'constant',
      specificHeat: specificHeat ?? 0,
      thickness,
      area: 0,
    });
    return nodes.length - 1;
  };
  const link = (a: number, b: number, distance: number, k: ThermalLink['conductivity']): void => {
    links.push({ a, b, factor: wall.area / distance, conductivity: k });
  };
  const found: WallNodes = { inside: -1, outside: -1 };
  wall.layers.forEach((layer, at) => {
    if (layer.type === 'plate') {
      const plate = node(steelDensity('carbon') * wall.area * layer.thickness, layer.specificHeat, layer.thickness);
      const before = wall.layers[at - 1];
      if (before?.type === 'solid') link(found.outside, plate, before.thickness / before.slices, before.conductivity);
      if (found.inside < 0) found.inside = plate;
      found.outside = found.plate = plate;
      return;
    }
    const plateBefore = wall.layers[at - 1]?.type === 'plate';
    const plateBehind = wall.layers[at + 1]?.type === 'plate';
    const step = layer.thickness / layer.slices;
    const first = plateBefore ? 1 : 0;
    const last = plateBehind ? layer.slices - 1 : layer.slices;
    for (let i = first; i <= last; i++) {
      const low = i === first ? 0 : (i - 0.5) * step;
      const high = i === last ? layer.thickness : (i + 0.5) * step;
      const next = node(layer.density * wall.area * (high - low), layer.specificHeat, 0);
      if (found.outside >= 0) link(found.outside, next, step, layer.conductivity);
      if (found.inside < 0) found.inside = next;
      found.outside = next;
    }
  });
  const face = (at: number, side: number, emissivity: number): void => {
    faces.push({
      node: at,
      zone: side,
      area: wall.area,
      shape: wall.shape,
      length: wall.length,
      windLength: wall.windLength,
      emissivity,
      sunShare: 0,
      wet: 0,
    });
  };
  face(found.inside, zone, wall.insideEmissivity);
  face(found.outside, OUTDOORS, wall.outsideEmissivity);
  return found;
}

/** Conductivity that is the same at every temperature. */
export function constantConductivity(value: number): ThermalLink['conductivity'] {
  return { temperatures: [300], values: [value] };
}
