/** What a pit is touched by and carried on: handles, trailer, loads. */
import { FINISHES } from './catalog/index.js';
import type { Handle, Load, PartName, Trailer } from './design.js';
import type { Fields } from './reading.js';
import { STATIONS } from './stations.js';

const PARTS: readonly PartName[] = ['firebox', 'chamber', 'upright'];

/** Coil of a wire whose file gives none: outside diameter and pitch over the wire's (estimates). */
const COIL = { diameter: 5, pitch: 2 };
/** Share of a handle's view that the hot plate takes (estimate): half for a plate without end, less for a real one. */
const SEES = 0.4;

export function resolveHandle(handle: Fields): Handle {
  const kind = handle.choice('kind', ['rod', 'coil'], 'rod');
  const diameter = handle.required('diameter', 'handleDiameter');
  const length = handle.required('length', 'handleLength');
  const material = handle.choice('material', ['carbon', 'stainless'], 'carbon');
  const station = STATIONS.find((each) => each === handle.text('station', ''));
  const ends = handle.number('ends', 1) === 2 ? 2 : 1;
  return {
    name: handle.text('name', ''),
    part: PARTS.find((each) => each === handle.text('part', '')) ?? 'firebox',
    ...(station ? { station } : {}),
    kind,
    diameter,
    length,
    standoff: handle.optional('standoff', 'standoff', length / 3),
    ends,
    ...(kind === 'coil'
      ? {
          coil: handle.optional('coil', 'coil', COIL.diameter * diameter),
          pitch: handle.optional('pitch', 'pitch', COIL.pitch * diameter),
        }
      : {}),
    material,
    emissivity: handle.optional(
      'emissivity',
      'emissivity',
      FINISHES[material === 'carbon' ? 'oxidised' : 'stainless'].emissivity,
    ),
    sees: handle.optional('sees', 'sees', SEES),
  };
}

export function resolveTrailer(trailer: Fields): Trailer {
  return {
    mass: trailer.required('mass', 'trailerMass'),
    balance: trailer.required('balance', 'position'),
    axle: trailer.required('axle', 'position'),
    hitch: trailer.optional('hitch', 'position', '0 in'),
    offset: trailer.required('offset', 'position'),
    runs: trailer.choice('runs', ['to hitch', 'from hitch'], 'to hitch'),
    axleRating: trailer.required('axleRating', 'rating'),
    hitchRating: trailer.required('hitchRating', 'rating'),
  };
}

export function resolveLoad(load: Fields): Load {
  return {
    name: load.text('name', ''),
    mass: load.required('mass', 'loadMass'),
    position: load.required('position', 'position'),
  };
}
