import { smokeOf } from './smoke.js';
import { gaugeReading } from './gauge.js';
import { BED_RELEASE, bedOf } from '../../design/bed.js';
import { FINISHES, INSULATIONS, LININGS } from '../../design/catalog/index.js';
import type { Design, Insulation } from '../../design/design.js';
import { OUTDOORS } from '../../network/types.js';
import { format, formatBoth, formatTime } from '../../units/index.js';
import { BIOT_LIMIT } from './biot.js';
import { liningStates } from './linings.js';
import type { Pit } from '../../network/pit.js';
import { listed } from '../../units/listed.js';
import type { SteadyState, WarmUp, Warning } from './result.js';
import type { WarmUpRun } from './warmUp.js';

/** A door gap counts as leaking smoke when it lets out more than this share of the stack's gas: common practice, no source. */
const SMOKE_SHARE = 1e-3;
/** Wood burns dirtily with less air than this over what it needs: common practice, no source. */
const LEAST_EXCESS_AIR = 1.5;

/** A fire is only just large enough where holding the target takes more than this share of it. */
const JUST_ENOUGH = 0.9;

const fahrenheit = (kelvin: number) => formatBoth('temperature', kelvin);

/** The fire gets less air than it asks for: what holds it down and what to change. */
export function airWarnings(state: SteadyState, where: string): Warning[] {
  const out: Warning[] = [];
  if (state.fire_W < 0.02 * state.fireAsked_W) {
    out.push({
      code: 'no-air-path',
      message:
        "next to no air gets to the fire, so it can't burn: open the intake, and see that throat and stack give the gas a way out",
      where,
      value: state.fire_W,
      limits: { low: state.fireAsked_W, unit: 'W' },
    });
    return out;
  }
  if (state.limitedByAir) {
    out.push({
      code: 'fire-limited-by-air',
      message: `air lets only ${formatBoth('power', state.fire_W)} of the ${formatBoth('power', state.fireAsked_W)} asked for burn: give it more intake, throat or stack, or a smaller fire`,
      where,
      value: state.fire_W,
      limits: { low: state.fireAsked_W, unit: 'W' },
    });
  } else if (state.excessAirRatio > 0 && state.excessAirRatio < LEAST_EXCESS_AIR) {
    out.push({
      code: 'little-air',
      message: `the fire gets ${state.excessAirRatio.toFixed(1)} times the air it needs; below ${LEAST_EXCESS_AIR} wood burns dirty and smoky: more intake or a taller stack (common practice, no source)`,
      where,
      value: state.excessAirRatio,
      limits: { low: LEAST_EXCESS_AIR, unit: '-', source: 'common practice, no source' },
    });
  }
  return out;
}

/** A full fire that no bed in this box makes: more than the most that wood on a grate is told to release. */
export function bedWarnings({ fire, firebox }: Design): Warning[] {
  const { bedArea } = bedOf({ fire, firebox });
  const most = bedArea * BED_RELEASE.high;
  if (fire.heat <= most) return [];
  return [
    {
      code: 'fire-beyond-bed',
      message: `the full fire of ${formatBoth('power', fire.heat)} is more than a bed of ${formatBoth('area', bedArea)} makes, at most about ${formatBoth('power', most)} (common practice, no source): a larger firebox or grate, or a smaller fire`,
      where: 'assumed fire',
      value: fire.heat,
      limits: { high: most, unit: 'W', source: 'common practice, no source' },
    },
  ];
}

/** An intake that blows out, or a throat whose gas runs back into the firebox: the pit draws the wrong way. */
export function backDraftWarnings(state: SteadyState, where: string): Warning[] {
  return state.openings
    .filter((o) => (o.role === 'intake' || o.role === 'throat' || o.role === 'stackExit') && o.flow_kg_per_s < -1e-6)
    .map((o) => ({
      code: 'back-draft',
      message: `the ${o.name} flows the wrong way: the pit back-drafts. Raise or widen the stack, or look at wind and at how the intake is placed`,
      where: `${o.name}, ${where}`,
      value: o.flow_kg_per_s,
      limits: { low: 0, unit: 'kg/s' },
    }));
}

/** Door gaps that blow smoke out under this fire, summed by part. */
export function smokeWarnings(state: SteadyState, where: string): Warning[] {
  const { stack, byPart } = smokeOf(state.openings);
  return [...byPart].flatMap(([part, flow]) => {
    if (flow <= SMOKE_SHARE * stack) return [];
    const share = flow < stack ? `${((100 * flow) / stack).toFixed(1)} % of the stack's` : 'more than by the stack';
    return [
      {
        code: 'door-gap-smoke',
        message: `${format('massFlow', flow, 'shop')} of smoke (${share}) leaves by its upper gaps: close them, or give more stack`,
        where: `${part} door, ${where}`,
        value: flow,
        limits: { high: SMOKE_SHARE * stack, unit: 'kg/s', source: 'common practice, no source' },
      },
    ];
  });
}

/** Plates too thick for one temperature, paint and insulation above what they stand; at the hottest state x. */
export function materialWarnings(pit: Pit, x: Float64Array, biot: Float64Array): Warning[] {
  const { network } = pit.model;
  const out: Warning[] = [];
  biot.forEach((value, i) => {
    if (value <= BIOT_LIMIT) return;
    out.push({
      code: 'biot-above-limit',
      message: `Biot number ${value.toFixed(2)}: the plate is too thick to count as one temperature through it; its face runs hotter than the value given`,
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
        message: `the outside of the ${part} reaches ${fahrenheit(surface)}, more than ${finish} stands (${fahrenheit(limit)}): leave it bare or use a coating made for it`,
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
      message: `the plate under the ${material} of the ${part} reaches ${fahrenheit(plate)}, more than it stands (${fahrenheit(row.maxTemperature)})`,
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
      message: `the ${material} in the ${part} reaches ${fahrenheit(hot_K)} on its hot face, more than it stands (${fahrenheit(row.maxTemperature)}): line it with what stands more, or burn less`,
      where: part,
      value: hot_K,
      limits: { high: row.maxTemperature, unit: 'K', source: row.source },
    });
  }
  return out;
}

/** Walls of a pit, each with the names that its nodes begin with; stacks count as one, as the first of them is. */
function walls({ design, geometry }: Pit): { part: string; begins: string; finish: string; insulation?: Insulation }[] {
  const [stack] = design.stacks;
  return [
    ...geometry.parts.flatMap(({ name, faces }) =>
      faces.map((face) => ({ part: name as string, begins: `${name} ${face.name}`, ...face.wall })),
    ),
    ...(stack ? [{ part: 'stack', begins: 'stack', finish: stack.finish, insulation: stack.insulation }] : []),
  ];
}

const isOf = (name: string, begins: string) => name === begins || name.startsWith(`${begins} `);

/** What each finish of each part reaches at its hottest [K]. */
function coatings(pit: Pit, x: Float64Array): { part: string; finish: string; surface: number }[] {
  const { faces, nodes } = pit.model.network;
  return hottestOf(
    walls(pit),
    ({ finish }) => finish,
    ({ begins }) =>
      faces.flatMap(({ zone, node }) => (zone === OUTDOORS && isOf(nodes[node].name, begins) ? [x[node]] : [])),
  ).map(({ part, kind, hottest }) => ({ part, finish: kind, surface: hottest }));
}

/** What the plate under each insulation of each part reaches at its hottest [K]. */
function wrappings(pit: Pit, x: Float64Array): { part: string; material: string; plate: number }[] {
  const { nodes } = pit.model.network;
  const wrapped = walls(pit).filter(({ insulation }) => insulation !== undefined && insulation.thickness > 0);
  return hottestOf(
    wrapped,
    ({ insulation }) => insulation!.material,
    ({ begins }) => nodes.flatMap(({ name, thickness }, i) => (thickness > 0 && isOf(name, begins) ? [x[i]] : [])),
  ).map(({ part, kind, hottest }) => ({ part, material: kind, plate: hottest }));
}

function hottestOf<W extends { part: string }>(
  some: W[],
  kindOf: (wall: W) => string,
  temperatures: (wall: W) => number[],
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

/** Flows below this share of the largest one say nothing about which way the gas goes. */
const FLOW_SHARE = 0.02;

/**
 * The pit has another steady state than the one that it comes to when lit cold: which, and what tells the two apart.
 *
 * @param state that a pit lit cold comes to; null: none
 */
export function otherState(state: SteadyState | null, other: SteadyState, where: string): Warning {
  const kind = where === 'hold fire' ? 'held at the target' : 'under this fire';
  const does = state
    ? `Lit cold, the pit comes to the state given here; ${kind} it has another one, with a fire of ${formatBoth('power', other.fire_W)}`
    : `Lit cold, the pit comes to no state ${kind}, though there is one, with a fire of ${formatBoth('power', other.fire_W)}`;
  return {
    code: 'another-state',
    message: `${does}${state ? `: ${flips(state, other)}` : ''}. A gust, an open door or another way of lighting it may tip it over; give the gas one clear way`,
    where,
    value: other.fire_W,
    limits: null,
  };
}

/** Two states share their gas out otherwise between stacks when one carries this share more or less of it. */
const STACK_SHARE = 0.1;

/** What sets two states of a pit apart: openings through which gas goes the other way, else where its temperature differs most. */
function flips(state: SteadyState, other: SteadyState): string {
  const flow = ({ openings }: SteadyState, i: number) => openings[i].flow_kg_per_s;
  const largest = Math.max(...state.openings.map(({ flow_kg_per_s: each }) => Math.abs(each)));
  const counts = (each: SteadyState, i: number) => Math.abs(flow(each, i)) > FLOW_SHARE * largest;
  const turned = state.openings.filter(
    ({ role }, i) =>
      role !== 'gap' &&
      role !== 'stackEntry' &&
      counts(state, i) &&
      counts(other, i) &&
      flow(state, i) * flow(other, i) < 0,
  );
  const names = listed(
    turned.map(({ name }) => `the ${name}`),
    3,
  );
  if (turned.length > 0) return `there gas goes the other way through ${names}`;
  const stack = state.openings.findIndex(
    ({ role }, i) => role === 'stackExit' && Math.abs(flow(other, i) - flow(state, i)) > STACK_SHARE * largest,
  );
  if (stack >= 0) {
    const drawn = (each: SteadyState) => format('massFlow', flow(each, stack), 'shop', { digits: 2 });
    return `there the ${state.openings[stack].name} carries ${drawn(other)} instead of ${drawn(state)}`;
  }
  const gas = state.stations.map(({ name, gas_K }, i) => ({ name, here: gas_K, there: other.stations[i].gas_K }));
  const most = gas.reduce((a, b) => (Math.abs(b.there - b.here) > Math.abs(a.there - a.here) ? b : a));
  const air = Math.abs(other.air_kg_per_s / state.air_kg_per_s - 1);
  const more =
    air > 0.1 ? `${other.air_kg_per_s > state.air_kg_per_s ? 'more' : 'less'} air comes to the fire and ` : '';
  return `there ${more}the gas at ${stationWords(most.name)} is ${most.there > most.here ? 'hotter' : 'cooler'} by ${format('temperatureDifference', Math.abs(most.there - most.here))}`;
}

function stationWords(name: string): string {
  return `the ${name.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`)}`;
}

/** Why the target is not reached, or the pit not soaked, in words: fire, air or loss. */
export function targetWarning(
  design: Design,
  assumed: SteadyState,
  steady: SteadyState | null,
  reached: number,
  run: WarmUpRun | null,
): Warning[] {
  const target = fahrenheit(design.fire.target);
  const low = { low: design.fire.target, unit: 'K' };
  const own = gaugeReading(assumed, design.gauge)!;
  const first = run && run.first;
  if (!steady && !first) {
    const why = assumed.limitedByAir
      ? 'air limits the fire: give it more intake, throat or stack'
      : 'no fire that the air allows is large enough against what the pit loses: more air, or insulation';
    const short = reached < design.fire.target;
    const message = short
      ? `${target} on the thermometer is out of reach; the most it gets to is ${fahrenheit(reached)}; ${why}`
      : `the fire of ${formatBoth('power', assumed.fire_W)} brings the thermometer only to ${fahrenheit(own)}, and no fire holds ${target}: a larger one tips the draft over to another way of flowing, on which it reads ${fahrenheit(reached)}. Give the gas one clear way`;
    return [{ code: 'target-not-reached', message, where: design.gauge, value: short ? reached : own, limits: low }];
  }
  if (run && (!run.finished || run.warmUp.soaked_s !== null)) return [];
  if (!first && own <= design.fire.target) {
    return [
      {
        code: 'target-not-reached',
        message: `the fire of ${formatBoth('power', assumed.fire_W)} brings the thermometer only to ${fahrenheit(own)}, not to ${target}: ${assumed.limitedByAir ? 'air limits it; open up' : design.fire.heatOf === 'air' ? 'its vents let no larger one burn clean; open up, or cut larger intakes' : 'it takes a larger fire'}`,
        where: design.gauge,
        value: own,
        limits: low,
      },
    ];
  }
  if (!run) return [];
  if (run.warmUp.gauge_s === null) {
    const { thermometer_K, fire_W } = run.warmUp.series;
    const reads = thermometer_K[thermometer_K.length - 1];
    const then = first
      ? `kept burning, it reads that after ${formatTime(first.time)}, too late for a cook: it takes a larger fire, a clearer way for the gas, or less that takes up heat`
      : `by then ${formatBoth('power', fire_W[fire_W.length - 1])} burn, and the draft has not settled, so that the state given for the full fire may never come about; give the fire more air and the gas one clear way`;
    return [
      {
        code: 'target-not-reached',
        message: `lit cold, the pit brings the thermometer only to ${fahrenheit(reads)} within 24 hours, not to ${target}: ${then}`,
        where: design.gauge,
        value: reads,
        limits: low,
      },
    ];
  }
  return [
    {
      code: 'not-soaked-in-a-day',
      message: `the pit has not soaked within 24 hours of this fire: ${slow(assumed, steady, target)}`,
      where: design.gauge,
      value: null,
      limits: { high: 86400, unit: 's' },
    },
  ];
}

function slow(assumed: SteadyState, steady: SteadyState | null, target: string): string {
  if (steady && steady.fire_W > JUST_ENOUGH * assumed.fireAsked_W) return `it is only just large enough for ${target}`;
  return `once it has read ${target} it never settles, for the draft keeps turning with the fire or something in it takes up heat for longer`;
}

/** Below its target by no more than this the thermometer counts as holding it [K]. */
const HOLDS = 0.5;

/** The thermometer has read its target and falls below it again, whatever the cook burns. */
export function fallsBack({ gauge_s, series }: WarmUp, { gauge, fire: { target } }: Design): Warning[] {
  if (gauge_s === null) return [];
  const { time_s, thermometer_K } = series;
  let lowest = -1;
  for (let i = 0; i < time_s.length; i++) {
    if (time_s[i] < gauge_s || thermometer_K[i] >= target - HOLDS) continue;
    if (lowest < 0 || thermometer_K[i] < thermometer_K[lowest]) lowest = i;
  }
  if (lowest < 0) return [];
  const value = thermometer_K[lowest];
  return [
    {
      code: 'draft-swings',
      message: `${fahrenheit(value)} is what the thermometer falls back to after ${formatTime(time_s[lowest])}, with a fire that tries to hold it: the draft tips from one way of flowing to another, or less fire lets the thermometer read more at first. Give the pit a clear way through: throat, stack and intakes large enough, stack top well above the intakes`,
      where: gauge,
      value,
      limits: { low: target, unit: 'K' },
    },
  ];
}
