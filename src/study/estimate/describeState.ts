/** What the result says about a solved state: stations, places, openings, losses. */
import type { PartName, StationName } from '../../design/design.js';
import { pressureDifference } from '../../network/flow.js';
import { gasAtStem, stationGas, stationLayers, stationSteel, steelAt, type Pit } from '../../network/pit.js';
import { OUTDOORS, type NetworkStem } from '../../network/types.js';
import { draftOf, pressurePath } from './draftOf.js';
import type { HottestOutside, OpeningState, PlaceState, StationState, SteadyState } from './result.js';
import { liningStates } from './linings.js';
import { LIMITED, type Solved } from './steady.js';

/** Everything the result tree says about a solved state. */
export function describeState(pit: Pit, solved: Solved): SteadyState {
  const { balances, model } = pit;
  const { x } = solved;
  const { network } = model;
  balances.evaluate(x, { mode: 'release', heat: solved.asked });
  const release = x[model.fire];
  const wood = release / network.fire.heatValue;
  const openings = openingStates(pit);
  const air = airIntoFirebox(pit);
  const total = balances.totalLoss();
  const linings = liningStates(pit, x);
  return {
    fire_W: release,
    fireAsked_W: solved.asked,
    wood_kg_per_s: wood,
    air_kg_per_s: air,
    excessAirRatio: wood > 0 ? airAtFire(pit, x) / (wood * network.fire.airPerFuel) : 0,
    letInRatio: wood > 0 ? air / (wood * network.fire.airPerFuel) : 0,
    converged: solved.outcome.converged,
    iterations: solved.outcome.iterations,
    residual: solved.outcome.massError,
    stations: network.stems.flatMap(({ place, station }, i) => (place ? [] : [stationState(pit, x, station, i)])),
    ...cookingPlaces(network.stems.flatMap((stem, i) => (stem.place ? [placeState(pit, x, stem, i)] : []))),
    hottestOutside: hottestOutside(pit, x),
    ...(linings.length > 0 ? { linings } : {}),
    heatLoss_W: {
      firebox: balances.lossOf('firebox'),
      chamber: balances.lossOf('chamber'),
      upright: balances.lossOf('upright'),
      stackWall: balances.lossOf('stack'),
      stackGas: balances.stackGasLoss + balances.evaporated,
      leaks: balances.leakLoss + balances.radiatedLoss,
      total,
    },
    draft: draftOf(pit),
    pressurePath: pressurePath(pit),
    openings,
    limitedByAir: release < LIMITED * solved.asked,
    energyError: release > 0 ? Math.abs(release - total) / release : 0,
    massError_kg_per_s: balances.massError(),
  };
}

function stationState(pit: Pit, x: Float64Array, station: string, stem: number): StationState {
  let outside = -Infinity;
  for (const face of pit.built.network.faces) {
    if (face.zone === OUTDOORS && face.station === station) outside = Math.max(outside, x[face.node]);
  }
  return {
    name: station as StationName,
    gas_K: stationGas(pit, x, station),
    dial_m: pit.model.network.stems[stem].height,
    thermometer_K: pit.balances.stems.settled(x, stem),
    steel_K: stationSteel(pit, x, station),
    outside_K: outside,
    layers: stationLayers(pit, x, station),
    steelBy: {
      roof_K: steelAt(pit, x, station, 'roof'),
      upper_K: steelAt(pit, x, station, 'upperSide'),
      lower_K: steelAt(pit, x, station, 'lowerSide'),
      floor_K: steelAt(pit, x, station, 'floor'),
    },
  };
}

function placeState(pit: Pit, x: Float64Array, { place, station, height }: NetworkStem, stem: number): PlaceState {
  const { name, kind, part, along } = place!;
  return {
    name,
    kind,
    part: part as PartName,
    station: station as StationName,
    along,
    height_m: height,
    gas_K: gasAtStem(pit, x, stem),
    thermometer_K: pit.balances.stems.settled(x, stem),
  };
}

/** The places, and how even they are. */
function cookingPlaces(places: PlaceState[]): Pick<SteadyState, 'places' | 'evenness'> {
  const grates = places.filter(({ kind }) => kind === 'grate');
  const apart = (those: PlaceState[]) => {
    const readings = those.map(({ thermometer_K }) => thermometer_K);
    return Math.max(...readings) - Math.min(...readings);
  };
  const by = (key: 'name' | 'station') => [...new Set(grates.map((place) => place[key]))];
  const stacked = by('station')
    .map((station) => grates.filter((place) => place.station === station))
    .filter((those) => those.length > 1);
  const racks = places.filter(({ kind }) => kind === 'rack');
  return {
    places,
    evenness: {
      grates: by('name').map((name) => ({ name, endToEnd_K: apart(grates.filter((place) => place.name === name)) })),
      topToBottom_K: stacked.length > 0 ? Math.max(...stacked.map(apart)) : null,
      racks_K: racks.length > 1 ? apart(racks) : null,
    },
  };
}

function hottestOutside(pit: Pit, x: Float64Array): HottestOutside {
  const { faces, nodes } = pit.built.network;
  const hottest = faces
    .filter(({ zone }) => zone === OUTDOORS)
    .reduce((most, face) => (x[face.node] > x[most.node] ? face : most));
  return {
    part: nodes[hottest.node].part,
    station: (hottest.station as StationName | undefined) ?? null,
    place: hottest.place ?? null,
    steel_K: x[hottest.node],
  };
}

/**
 * Air that reaches the fire [kg/s], from what the gas of its zone is made of: air that comes back to it through the
 * throat, as from a leaky chamber into a firebox with its intakes all but shut, counts as well as what the intakes let
 * in.
 */
export function airAtFire(pit: Pick<Pit, 'model'>, x: Float64Array): number {
  const { fire, network, fuel } = pit.model;
  const burnt = x[fuel + network.fire.zone];
  const gas = (Math.max(0, x[fire]) / network.fire.heatValue) * network.fire.gasPerFuel;
  return burnt > 0 && gas > 0 ? ((1 - burnt) / burnt) * gas : airIntoFirebox(pit);
}

/** Air that the firebox takes in from outdoors, by intakes and gaps, after an evaluation [kg/s]. */
function airIntoFirebox({ model }: Pick<Pit, 'model'>): number {
  let air = 0;
  model.network.openings.forEach((o, i) => {
    if (o.from === model.network.fire.zone && o.to === OUTDOORS) air += model.flows[i].backward;
  });
  return air;
}

/** Openings as the design has them: one that is cut by height counts as a whole. */
function openingStates({ model }: Pit): OpeningState[] {
  const { openings, zones } = model.network;
  return [...new Set(openings.map(({ name }) => name))].map((name) => {
    const slices = openings.flatMap((o, i) => (o.name === name ? [i] : []));
    const { role, from, eitherWay, gap } = openings[slices[0]];
    const stack = role === 'stackEntry' || zones[from].part === 'stack';
    const inwards = role === 'intake' ? -1 : 1;
    const sum = (of: (i: number) => number) => slices.reduce((total, i) => total + of(i), 0);
    const area = sum((i) => openings[i].area);
    const dp = (i: number) => pressureDifference(model, openings[i], openings[i].centre);
    return {
      name,
      role,
      ...(gap === undefined ? {} : { gap }),
      ...(role === 'gap' ? { part: zones[from].part as PartName, station: zones[from].station as StationName } : {}),
      way: eitherWay ?? (stack ? 'up' : 'in'),
      eitherWay: eitherWay !== undefined,
      area_m2: area,
      flow_kg_per_s: inwards * sum((i) => model.flows[i].forward - model.flows[i].backward) + 0,
      back_kg_per_s: sum((i) => (role === 'intake' ? model.flows[i].forward : model.flows[i].backward)),
      dp_Pa: inwards * (sum((i) => openings[i].area * dp(i)) / area) + 0,
    };
  });
}
