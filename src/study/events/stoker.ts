import { airAtFire } from '../estimate/describeState.js';
import type { Demand } from '../../network/balances.js';
import { flowState } from '../../network/flow.js';
import type { Pit } from '../../network/pit.js';
import type { StopAt } from '../../network/stopAt.js';
import { airHolds, glowPace } from '../../physics/splits.js';
import { CATCHING, type Bed } from './bed.js';
import { openDoor } from './door.js';
import { Follower } from './follower.js';
import { fallingRate, lastFellTo, meanSince } from './readingCurve.js';
import type { Timeline } from './timeline.js';
import { variantOf } from './variant.js';

/** Longest step: the bed's air is looked at after each [s]; the same while a fire is built. */
export const BED_STEP = 300;
const KINDLING_STEP = 150;
/** The same while the thermometer lies below the line, so that it is seen whether it still falls [s]. */
const BELOW_STEP = 60;
/** Between points of a curve at most [s]. */
export const CURVE_STEP = 60;
/** First step after a change, while which a door stands open [s]. */
const FIRST_STEP = 20;
/** A reading that moves less than this from look to look stands still [K]. */
const STILL = 0.3;
/** Readings are extrapolated over so many looks while a fire is built, and a split has caught after so long [s]. */
const AHEAD = 2;
const CATCH_TIME = 600;
/** Times nearer than this are the same [s]. */
const CLOSE = 1e-6;
/** Flames that get less than this of what they would burn smoulder: common practice, no source. */
export const SMOULDERS = 0.5;
/** A bed fed for so long is what it always is [s]. */
const BURNT_IN = 5 * 3600;
/** Of the line below the target: a mean reading that near it leaves the intakes as they are. */
const NEAR_ENOUGH = 0.5;
/** Factor by which intakes are opened or closed, once a split. */
const TURN = 1.25;
/** How the fire is minded. */
export interface Rule {
  /** what the thermometer should read [K], and how far below it the next split is laid on [K] */
  target: number;
  line: number;
  /** how long after that it is laid on [s] */
  late: number;
  /** from one look to the next while a fire is built [s] */
  look: number;
  /** one split every so often, whatever the thermometer reads [s]; undefined: by the thermometer */
  every?: number;
  /** heat of a split [J], and how long the firebox door stands open for it [s] */
  split: number;
  door: number;
  /**
   * least and most that the intakes are open [-], turned once a split by what was read since the last; undefined: they
   * stay as they are
   */
  intakes?: readonly [number, number];
  /** the largest fire that is made of a cold pit [W] */
  full: number;
}

/** Whether wood is laid on, and what ends it sooner. */
interface Minding {
  feed?: boolean;
  enough?: () => boolean;
  stop?: StopAt;
}

/** A split laid on. */
interface Laid {
  time_s: number;
  /** index of the moment in the curve */
  at: number;
  /** how far the intakes stand open from then on [-] */
  open: number;
}

/** Somebody with a pile of splits and an eye on the thermometer. Deterministic: there is no chance in it. */
export class Stoker {
  readonly laid: Laid[] = [];
  /** least air over air wanted that the flames have had [-] */
  leastAir = Infinity;
  private nextLook: number;
  private before: number;
  private due = Infinity;
  /** how much later than the rule has it the next split is laid on [s] */
  private held = 0;
  /** the fire is being built in a cold pit */
  private kindling = false;
  /** when the bed was last looked at, and the heat released by then */
  private at: { time: number; heat: number };
  private flames = new Follower();
  private glows = new Follower();
  /** the pit that the door was last opened of, the same with it open, and how that settled, and the first when shut */
  private door?: { of: Pit; pit: Pit; settled?: Float64Array; shut?: Float64Array };
  private readonly areas: { index: number; area: number }[];
  open: number;

  /**
   * @param line a timeline in whose pit the intakes may be moved
   * @param wholeOpen the intakes' share that stands open in that pit
   * @param bedArea plan of the bed [m2]
   * @param airFactor air that clean flames want, over what their wood needs [-]
   */
  constructor(
    readonly line: Timeline,
    readonly bed: Bed,
    readonly rule: Rule,
    private readonly box: { bedArea: number; airFactor: number },
    wholeOpen: number,
  ) {
    const { time, fireHeat } = line.moment;
    this.nextLook = time;
    this.before = line.reading;
    this.at = { time, heat: fireHeat };
    this.open = wholeOpen;
    this.areas = line.pit.model.network.openings.flatMap(({ role, area }, index) =>
      role === 'intake' ? [{ index, area: area / wholeOpen }] : [],
    );
  }

  /** Be late with the next split [s]. */
  beLate(by: number): void {
    this.held = by;
    this.due += by;
  }

  /** Lay on a split now, and turn the intakes by how the last one read. @returns false: the gas does not settle */
  lay(): boolean {
    const { line, bed, rule } = this;
    const last = this.laid.at(-1);
    const turned = last === undefined || this.kindling || this.turn(meanSince(line.curve, last.at) - rule.target);
    bed.lay(rule.split);
    this.held = 0;
    this.laid.push({ time_s: line.moment.time, at: Math.max(0, line.curve.time_s.length - 1), open: this.open });
    this.due = this.kindling ? Infinity : line.moment.time + (rule.every ?? Infinity);
    line.shorten();
    line.beginAgain();
    return turned && (this.kindling || rule.door <= 0 || this.throughDoor());
  }

  /** The firebox door stands open for a while. @returns false: the gas does not settle, or steps broke off */
  private throughDoor(): boolean {
    const { line, rule } = this;
    const { pit, moment } = line;
    if (this.door?.of !== pit) this.door = { of: pit, pit: variantOf(pit, openDoor(pit.design, 'firebox')) };
    const { door } = this;
    if (!this.enter(door.pit, undefined, door.settled)) return false;
    door.settled = line.moment.x;
    if (!this.mind(line.moment.time + rule.door, { feed: false })) return false;
    if (!this.enter(pit, undefined, door.shut ?? moment.x)) return false;
    door.shut = line.moment.x;
    return true;
  }

  private readonly demandAt = (t: number): Demand =>
    this.bed.demand(Math.max(0, t - this.at.time), this.line.pit.model.network.fire.radiantShare);

  /**
   * Lay and burn splits for long, in the air that the pit has now and at its fire, until the bed is what it always is.
   */
  burnIn(): void {
    const { bed, rule, line } = this;
    this.breathe();
    bed.flaming = 1;
    const interval = rule.split / line.fire;
    const steps = Math.max(4, Math.ceil(interval / 120));
    const step = interval / steps;
    for (let left = BURNT_IN; left > 0; left -= interval) {
      bed.lay(rule.split);
      for (let i = 0; i < steps; i++) {
        bed.burn(step, (step * (bed.power(0) + 4 * bed.power(step / 2) + bed.power(step))) / 6);
      }
    }
  }

  /** Light the bed in a cold pit. */
  light(): void {
    this.kindling = true;
    this.line.light(this.demandAt);
  }

  /** Take over the fire: from now on it gives what the bed gives. @returns false: the gas does not settle */
  takeOver(guess?: Float64Array): boolean {
    if (!this.line.burn(this.demandAt, undefined, FIRST_STEP, guess)) return false;
    // gas goes as it will from now on: what air it brings tells how the bed burns
    this.breathe();
    return true;
  }

  /** Go on in a variant of the pit, its intakes as the cook has them. @returns false: the gas does not settle */
  enter(pit: Pit, adjust?: (x: Float64Array) => void, guess?: Float64Array): boolean {
    this.line.enter(pit, adjust);
    this.setIntakes();
    // air comes another way from now on
    [this.flames, this.glows] = [new Follower(), new Follower()];
    return this.takeOver(guess);
  }

  /**
   * Mind the fire up to a time.
   *
   * @param feed false: nobody looks, and no wood is laid on
   * @param enough looked at after each step: end here?
   * @param stop a step ends where this happens
   * @returns false: the steps broke off
   */
  mind(end: number, { feed = true, enough, stop }: Minding = {}): boolean {
    const { line } = this;
    while (line.moment.time < end - CLOSE) {
      const now = line.moment.time;
      if (feed) {
        if (now >= this.due - CLOSE && !this.lay()) return false;
        if (now >= this.nextLook - CLOSE && !this.look()) return false;
        if (line.moment.time > now) continue;
      }
      const until = feed ? Math.min(end, this.nextLook, this.due) : end;
      const before = line.reading;
      const watched = stop ?? (feed && this.waits(before) ? this.atLine : undefined);
      const took = line.step(Math.min(until, now + this.longest(now, feed)), watched);
      if (took === 'failed') return false;
      this.burned();
      if (feed && this.due === Infinity && this.fallen(before)) {
        this.due =
          (watched && took === 'event' ? lastFellTo(this.level, line.curve) : line.moment.time) +
          this.rule.late +
          this.held;
      }
      if (enough?.()) return true;
    }
    return true;
  }

  /** Book what a step gave, and see what air the bed gets now. */
  private burned(): void {
    const { time, fireHeat } = this.line.moment;
    this.bed.burn(time - this.at.time, fireHeat - this.at.heat);
    this.at = { time, heat: fireHeat };
    this.breathe();
  }

  private breathe(): void {
    const { line, bed, box } = this;
    const { model } = line.pit;
    const { fire } = model.network;
    const { x } = line.moment;
    model.gasState(x);
    flowState(model, x);
    const air = airAtFire(line.pit, x);
    const wanted = (box.airFactor * fire.airPerFuel * bed.wish) / fire.heatValue;
    const ratio = wanted > 0 ? air / wanted : Infinity;
    if (this.kindling) {
      // the firebox door stands ajar until the pit draws by itself
      [bed.flaming, bed.glowing] = [1, 1];
      return;
    }
    this.leastAir = Math.min(this.leastAir, ratio);
    bed.flaming = this.flames.next(bed.flaming, ratio === Infinity ? 1 : airHolds(ratio));
    const oxygen = model.massFraction('O2', x[model.fuel + fire.zone]);
    bed.glowing = this.glows.next(bed.glowing, glowPace(air / (model.outdoorDensity * box.bedArea), oxygen));
  }

  /**
   * The longer nothing is laid on, the more slowly the bed changes. A step that would go far past the line, as the
   * thermometer falls now, would only have to be tried again [s].
   */
  private longest(now: number, feed: boolean): number {
    if (this.kindling) return KINDLING_STEP;
    if (feed && this.lies()) return BELOW_STEP;
    const longest = Math.max(BED_STEP, 0.05 * (now - (this.laid.at(-1)?.time_s ?? now)));
    const { reading } = this.line;
    const fall = fallingRate(this.line.curve);
    if (!feed || !this.waits(reading) || fall <= 0) return longest;
    return Math.min(longest, (reading - this.level) / fall + 0.8 * (this.rule.late + this.held));
  }

  /** Where the thermometer has fallen to the line: a split is laid on some time after that. */
  private get atLine(): StopAt {
    const { nodeCount, network } = this.line.pit.model;
    const gauge = nodeCount + network.gauge;
    return { left: ({ x }) => x[gauge] - this.level, within: STILL, grace: this.rule.late + this.held };
  }

  private get level(): number {
    return this.rule.target - this.rule.line;
  }

  /** Is it the thermometer that the next split waits for? */
  private waits(reading: number): boolean {
    return !this.kindling && this.rule.every === undefined && this.due === Infinity && reading > this.level;
  }

  /** Does the thermometer lie below the line, and nothing laid on is on its way? */
  private lies(): boolean {
    return this.rule.every === undefined && this.due === Infinity && this.line.reading <= this.level + STILL;
  }

  /** Has the thermometer fallen to the line, or does the last split not lift it? */
  private fallen(before: number): boolean {
    const { line, rule, laid, level } = this;
    if (this.kindling || rule.every !== undefined || line.reading > level + STILL) return false;
    // what smoulders for want of air burns no better with more wood on it
    if (this.bed.flaming < SMOULDERS) return false;
    const since = line.moment.time - (laid.at(-1)?.time_s ?? -Infinity);
    // what the door let out is no reason for more wood
    return (before > level + STILL && since >= CATCHING) || (line.reading < before && since >= CATCH_TIME);
  }

  /** Look at the thermometer of a fire that is not up yet. @returns false: the gas does not settle */
  private look(): boolean {
    const { line, before } = this;
    const { reading } = line;
    this.before = reading;
    const laid = !(this.kindling && this.builds(reading, before)) || this.lay();
    this.nextLook = this.kindling ? line.moment.time + this.rule.look : Infinity;
    return laid;
  }

  /**
   * Does a fire that is being built want another split? While the thermometer, going on as it does, would not be at the
   * target by the time that a split has caught, and the bed gives less than the full fire with it.
   */
  private builds(reading: number, before: number): boolean {
    const { rule, bed } = this;
    this.kindling = reading < rule.target;
    const soon = reading + AHEAD * (reading - before);
    return soon < rule.target && bed.wish + bed.flamesOf(rule.split) <= rule.full;
  }

  /**
   * Open or close the intakes by how far the last split read off the target [K]. @returns false: the gas does not
   * settle
   */
  private turn(off: number): boolean {
    const { rule } = this;
    if (!rule.intakes || Math.abs(off) < NEAR_ENOUGH * rule.line) return true;
    const [least, most] = rule.intakes;
    const open = Math.min(most, Math.max(least, off > 0 ? this.open / TURN : this.open * TURN));
    if (open === this.open) return true;
    this.open = open;
    this.setIntakes();
    return this.takeOver();
  }

  private setIntakes(): void {
    const { openings } = this.line.pit.model.network;
    for (const { index, area } of this.areas) openings[index].area = area * this.open;
  }
}
