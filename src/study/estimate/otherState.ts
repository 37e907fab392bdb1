/** Another state of the same pit, and what flips it. */
import { amount, told, type Told } from '../../units/index.js';
import { listed } from '../../units/listed.js';
import type { SteadyState, Warning, WhichFire } from './result.js';

/** Flows below this share of the largest one say nothing about which way the gas goes. */
const FLOW_SHARE = 0.02;

/**
 * The pit has another steady state than the one that it comes to when lit cold: which, and what tells the two apart.
 *
 * @param state that a pit lit cold comes to; null: none
 */
export function otherState(state: SteadyState | null, other: SteadyState, fire: WhichFire): Warning {
  const kind = fire === 'hold fire' ? 'held at the target' : 'under this fire';
  const does = state
    ? told`Lit cold, the pit comes to the state given here; ${kind} it has another one, with a fire of ${amount('power', other.fire_W)}`
    : told`Lit cold, the pit comes to no state ${kind}, though there is one, with a fire of ${amount('power', other.fire_W)}`;
  return {
    code: 'another-state',
    message: told`${does}${state ? told`: ${flips(state, other)}` : ''}. A gust, an open door or another way of lighting it may tip it over; give the gas one clear way`,
    where: '',
    fire,
    value: other.fire_W,
    limits: null,
  };
}

/** Two states share their gas out otherwise between stacks when one carries this share more or less of it. */
const STACK_SHARE = 0.1;

const largestFlow = ({ openings }: SteadyState) =>
  Math.max(...openings.map(({ flow_kg_per_s: flow }) => Math.abs(flow)));

/**
 * Names of the openings that two states have both, through which gas goes one way in the one and the other way in the
 * other.
 */
export function turnedOpenings(state: SteadyState, other: SteadyState): string[] {
  const counts = [state, other].map((each) => FLOW_SHARE * largestFlow(each));
  return state.openings
    .filter(({ name, role, flow_kg_per_s: here }) => {
      const there = other.openings.find((each) => each.name === name && each.role === role)?.flow_kg_per_s ?? 0;
      const minor =
        role === 'gap' || role === 'stackEntry' || Math.abs(here) < counts[0] || Math.abs(there) < counts[1];
      return !minor && here * there < 0;
    })
    .map(({ name }) => name);
}

/**
 * What sets two states of a pit apart: openings through which gas goes the other way, else where its temperature
 * differs most.
 */
function flips(state: SteadyState, other: SteadyState): Told {
  const flow = ({ openings }: SteadyState, i: number) => openings[i].flow_kg_per_s;
  const largest = largestFlow(state);
  const turned = listed(
    turnedOpenings(state, other).map((name) => `the ${name}`),
    3,
  );
  if (turned !== '') return `there gas goes the other way through ${turned}`;
  const stack = state.openings.findIndex(
    ({ role }, i) => role === 'stackExit' && Math.abs(flow(other, i) - flow(state, i)) > STACK_SHARE * largest,
  );
  if (stack >= 0) {
    const drawn = (each: SteadyState) => amount('massFlow', flow(each, stack), { digits: 2 });
    return told`there the ${state.openings[stack].name} carries ${drawn(other)} instead of ${drawn(state)}`;
  }
  const gas = state.stations.map(({ name, gas_K }, i) => ({ name, here: gas_K, there: other.stations[i].gas_K }));
  const most = gas.reduce((a, b) => (Math.abs(b.there - b.here) > Math.abs(a.there - a.here) ? b : a));
  const air = Math.abs(other.air_kg_per_s / state.air_kg_per_s - 1);
  const more =
    air > 0.1 ? `${other.air_kg_per_s > state.air_kg_per_s ? 'more' : 'less'} air comes to the fire and ` : '';
  return told`there ${more}the gas at ${stationWords(most.name)} is ${most.there > most.here ? 'hotter' : 'cooler'} by ${amount('temperatureDifference', Math.abs(most.there - most.here))}`;
}

function stationWords(name: string): string {
  return `the ${name.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`)}`;
}
