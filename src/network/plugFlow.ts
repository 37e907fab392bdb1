import { outflowDeficit } from '../physics/plugFlow.js';
import type { Model } from './model.js';
import { OUTDOORS, type Network } from './types.js';

/** Share by which a flow is changed to see what follows it. */
const STEP = 1e-4;

/**
 * Zones that gas flows through as through a pipe: it cools on its way, so that it leaves colder than the zone's mean,
 * by part of what the walls take. What is missing in it is missing where it ends: for a jet in the layers that its own
 * gas gets to. Of what the walls take each stream that leaves gives its part, so that gas which others renew on its way
 * cools the less along it.
 *
 * A side of an opening is twice the opening's index, and one more where gas leaves its zone `to` backwards.
 */
export class PlugFlow {
  /** per side: how what is missing there grows with that flow [J/kg] */
  readonly deficitByFlow: Float64Array;
  /** the same with all that leaves its zone, whichever way [J/kg] */
  private readonly deficitByLeaving: Float64Array;
  /** per side: share of its zone's wall heat that is missing in what leaves [-] */
  private readonly share: Float64Array;
  /** all that leaves each zone [kg/s] */
  private readonly leaving: Float64Array;
  private readonly sides: Int32Array;
  private readonly sidesOf: Int32Array[];

  constructor(private readonly model: Model) {
    const { openings, zones } = model.network;
    this.sides = Int32Array.from(
      openings.flatMap((_, i) => [2 * i, 2 * i + 1].filter((side) => isPipe(model.network, side))),
    );
    this.sidesOf = zones.map((_, z) => this.sides.filter((side) => this.from(side) === z));
    this.deficitByFlow = new Float64Array(2 * openings.length);
    this.deficitByLeaving = new Float64Array(2 * openings.length);
    this.share = new Float64Array(2 * openings.length);
    this.leaving = new Float64Array(zones.length);
  }

  /**
   * Move what is missing from where gas leaves to where it ends, in the zones' gas rows of `algebraic`, with the flows
   * of the last `flowState` and `streamState`.
   *
   * @param toWalls heat from gas to walls of each zone [W]
   * @param conductance of that heat [W/K]
   */
  evaluate(toWalls: Float64Array, conductance: Float64Array, algebraic: Float64Array): void {
    const { model, deficitByFlow, deficitByLeaving, share, leaving } = this;
    if (this.sides.length === 0) return;
    this.sumLeaving();
    for (let k = 0; k < this.sides.length; k++) {
      const side = this.sides[k];
      const own = this.from(side);
      const flow = side % 2 === 0 ? model.flows[side >> 1].forward : model.flows[side >> 1].backward;
      share[side] = deficitByFlow[side] = deficitByLeaving[side] = 0;
      if (!(flow > 0)) continue;
      const all = leaving[own];
      const part = flow / all;
      const carried = all * model.heatCapacity[own];
      const along = outflowDeficit(conductance[own], carried);
      const more = outflowDeficit(conductance[own], (1 + STEP) * carried);
      share[side] = part * along;
      deficitByFlow[side] = (toWalls[own] * along) / all;
      deficitByLeaving[side] = (toWalls[own] * part * ((more - along) / STEP - along)) / all;
      this.move(side, -share[side] * toWalls[own], algebraic, model.gasRow, 1);
    }
  }

  /** Ways that gas may take on leaving as from a pipe: from which zone, and in which rows of zones that shows. */
  get ways(): { from: number; zones: number[] }[] {
    const { network, jetOf } = this.model;
    return Array.from(this.sides, (side) => {
      const from = this.from(side);
      const { from: a, to: b } = network.openings[side >> 1];
      const end = side % 2 === 0 ? b : a;
      const jet = side % 2 === 0 ? jetOf[side >> 1] : undefined;
      return { from, zones: [from, ...(jet?.zones ?? [end])].filter((z) => z !== OUTDOORS) };
    });
  }

  /** Enter how what is missing changes with an unknown, given how what the walls of a zone take changes with it. */
  wallSlopes(m: Float64Array, zone: number, unknown: number, toWalls: number): void {
    const { size: n, gas } = this.model;
    const sides = this.sidesOf[zone];
    for (let k = 0; k < sides.length; k++) this.move(sides[k], this.share[sides[k]] * toWalls, m, gas * n + unknown, n);
  }

  /** The same, given how all that leaves the zone, whichever way, changes with it. */
  leaveSlopes(m: Float64Array, zone: number, unknown: number, leaving: number): void {
    const { size: n, gas } = this.model;
    const sides = this.sidesOf[zone];
    for (let k = 0; k < sides.length; k++)
      this.move(sides[k], this.deficitByLeaving[sides[k]] * leaving, m, gas * n + unknown, n);
  }

  /**
   * Take an amount from the row of the zone that gas leaves and give it to where it ends; rows of zones begin at
   * `first`.
   */
  private move(side: number, amount: number, rows: Float64Array, first: number, apart: number): void {
    if (amount === 0) return;
    const { openFrom, openTo, jetOf, flows } = this.model;
    const i = side >> 1;
    const ahead = side % 2 === 0;
    rows[first + (ahead ? openFrom[i] : openTo[i]) * apart] -= amount;
    const to = ahead ? openTo[i] : openFrom[i];
    if (to === OUTDOORS) return;
    const jet = ahead ? jetOf[i] : undefined;
    if (jet === undefined) {
      rows[first + to * apart] += amount;
      return;
    }
    const { zones, own } = jet;
    for (let k = 0; k < zones.length; k++) rows[first + zones[k] * apart] += (amount * own[k]) / flows[i].forward;
  }

  /** Zone that gas leaves by a side. */
  private from(side: number): number {
    return zoneOf(this.model.network, side);
  }

  private sumLeaving(): void {
    const { model, leaving } = this;
    const { flows, openFrom, openTo } = model;
    leaving.fill(0);
    for (let i = 0; i < flows.length; i++) {
      leaving[openFrom[i]] += flows[i].forward;
      if (openTo[i] !== OUTDOORS) leaving[openTo[i]] += flows[i].backward;
    }
    for (const { zones, left } of model.columns) for (let k = 0; k < zones.length; k++) leaving[zones[k]] += left[k];
  }
}

function zoneOf({ openings }: Network, side: number): number {
  return side % 2 === 0 ? openings[side >> 1].from : openings[side >> 1].to;
}

/** Does gas leave a zone as from a pipe by this side of an opening? */
function isPipe(network: Network, side: number): boolean {
  const zone = zoneOf(network, side);
  if (zone === OUTDOORS) return false;
  const { plug } = network.zones[zone];
  return plug === 'out' || (plug === 'along' && network.openings[side >> 1].inner === true);
}
