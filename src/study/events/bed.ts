import type { Demand } from '../../network/balances.js';
import { alight, charcoalLeft, charred } from '../../physics/splits.js';

/** How wood burns on a bed. */
interface Burning {
  /** mean time at which the flaming heat of a split leaves it, burning unhindered [s] */
  flame: number;
  /** share of its heat that stays in charcoal [-] */
  charcoal: number;
  /** time in which charcoal falls to 1/e in a usual draft [s] */
  glow: number;
}

/** Time until a split burns all over: estimate, spread 1-6 min [s]. */
export const CATCHING = 180;
/** Share of the heat of glowing charcoal that leaves as radiation: estimate, spread 0.35-0.7. */
const COALS_RADIANT = 0.5;
/** Charcoal lit in a chimney glows all over after this: 15 min, common practice, no source [s]. */
const CHIMNEY = 900;
/** A split with less than this share of its heat left has burned [-]. */
const GONE = 1e-9;

interface Split {
  /** of all its wood [J] */
  heat: number;
  /** since it was laid on [s] */
  age: number;
  /** time of unhindered burning that its front of charcoal is deep, of `through` [s] */
  burned: number;
}

/**
 * Wood and charcoal in a firebox. Heat laid on is heat released, or unburnt wood, or charcoal: whoever burns it says
 * how much it gave, and what a step gave more or less than meant is charcoal's.
 */
export class Bed {
  /** heat of all wood and coals laid on, and released so far [J] */
  laid = 0;
  released = 0;
  /** pace of the flames, by the air they get, and of the charcoal [-] */
  flaming = 1;
  glowing = 1;
  private readonly splits: Split[] = [];
  private charcoal = 0;
  /** charcoal in a chimney that is catching [J], and since when [s] */
  private readonly chimney = { heat: 0, age: CHIMNEY };
  /** time from all over alight to burned through [s] */
  private readonly through: number;

  constructor(private readonly law: Burning) {
    this.through = 3 * law.flame;
  }

  /** Lay on a split [J]. */
  lay(heat: number): void {
    this.splits.push({ heat, age: 0, burned: 0 });
    this.laid += heat;
  }

  /** Lay on charcoal that glows already [J]. */
  layCoals(heat: number): void {
    this.charcoal += heat;
    this.laid += heat;
  }

  /** Light charcoal in a chimney: it catches evenly. */
  lightCoals(heat: number): void {
    Object.assign(this.chimney, { heat, age: 0 });
    this.laid += heat;
  }

  /** Heat in wood that has not charred, and in charcoal [J]. */
  get left(): { wood: number; charcoal: number } {
    const wood = this.splits.reduce((sum, { heat, burned }) => sum + heat * (1 - charred(burned / this.through)), 0);
    return { wood, charcoal: this.charcoal + this.chimney.heat - this.caught(0) };
  }

  /** Heat of the chimney's charcoal that glows some time from now [J]. */
  private caught(time: number): number {
    const { heat, age } = this.chimney;
    return (heat * Math.min(CHIMNEY, age + time)) / CHIMNEY;
  }

  /** What flames and charcoal give some time from now, its air as it is [W]. */
  private gives(time: number): { flames: number; coals: number } {
    const { charcoal: share, glow } = this.law;
    let flames = 0;
    let made = 0;
    for (const { heat, age, burned } of this.splits) {
      const now = alight(age + time, CATCHING);
      const depth = (burned + this.flaming * (now.burned - alight(age, CATCHING).burned)) / this.through;
      if (depth < 1) flames += (heat * 2 * (1 - depth) * this.flaming * now.share) / this.through;
      made += heat * (charred(depth) - charred(burned / this.through));
    }
    const lit = share * made + this.caught(time) - this.caught(0);
    const coals = charcoalLeft(this.charcoal, time > 0 ? lit / time : 0, this.glowing, glow, time);
    return { flames: (1 - share) * flames, coals: (coals * this.glowing) / glow };
  }

  /** What it gives some time from now, its air as it is [W]. */
  power(time: number): number {
    const { flames, coals } = this.gives(time);
    return flames + coals;
  }

  /**
   * The same, with the share of it that leaves as radiation: charcoal's is higher, the flames' such that a bed that is
   * always fed alike radiates as the steady fire does.
   *
   * @param radiant share of the steady fire [-]
   */
  demand(time: number, radiant: number): Demand {
    const { flames, coals } = this.gives(time);
    const { charcoal: share } = this.law;
    const ofCoals = share > 0 ? Math.min(COALS_RADIANT, radiant / share) : radiant;
    const ofFlames = share < 1 ? (radiant - share * ofCoals) / (1 - share) : radiant;
    const heat = flames + coals;
    return { mode: 'release', heat, radiant: heat > 0 ? (ofFlames * flames + ofCoals * coals) / heat : radiant };
  }

  /** What it would give now with air enough for its flames [W]. */
  get wish(): number {
    const { flaming } = this;
    this.flaming = 1;
    const power = this.power(0);
    this.flaming = flaming;
    return power;
  }

  /** What a split's flames give once it burns all over [J], [W]. */
  flamesOf(heat: number): number {
    return (2 * (1 - this.law.charcoal) * heat) / this.through;
  }

  /** Burn for a time in which it gave so much heat [s], [J]. */
  burn(time: number, gave: number): void {
    let charring = 0;
    for (const split of this.splits) {
      const before = charred(split.burned / this.through);
      const more = alight(split.age + time, CATCHING).burned - alight(split.age, CATCHING).burned;
      split.burned += this.flaming * more;
      split.age += time;
      charring += split.heat * (charred(split.burned / this.through) - before);
    }
    for (let i = this.splits.length - 1; i >= 0; i--) {
      if (1 - charred(this.splits[i].burned / this.through) < GONE) this.splits.splice(i, 1);
    }
    this.charcoal += charring + this.caught(time) - this.caught(0) - gave;
    this.chimney.age += time;
    this.released += gave;
  }
}
