import type { Demand } from '../../network/balances.js';
import { DEFAULT_TOLERANCE } from '../../network/networkSystem.js';
import { gasAtStem, stationGas, stationSteel, type Pit } from '../../network/pit.js';
import { betweenEnds, cubicWeights, turnsAt, type Moment, type Stride } from '../../network/stride.js';
import { Recall } from '../../solve/recall.js';
import type { StopAt } from '../../network/stopAt.js';
import { Transient } from '../../network/transient.js';

/** Curves of the gauge's station against time, as every study of events gives them. */
export interface Curve {
  time_s: number[];
  fire_W: number[];
  /** what the lagging thermometer shows */
  thermometer_K: number[];
  gas_K: number[];
  steel_K: number[];
}

/** How finely a timeline is followed, and who is told of it. */
interface TimelineOptions {
  /** time that the first moment counts as [s] (default 0) */
  time?: number;
  /** factor on the tolerances of the time steps (default 1) */
  tolerance?: number;
  /** longest step [s] (default: as the error allows) */
  longestStep?: number;
  /** the curve has points no further apart than this, and one wherever the reading turns [s] (default: one a step) */
  spacing?: number;
  /** told of every moment from which it goes on under a new fire, and of every step */
  follow?: (part: Moment | Stride) => void;
}

/**
 * A pit followed through events: fires that change, doors that open, weather that turns. Carries plate temperatures,
 * heat accounts and curves from one stretch to the next.
 */
export class Timeline {
  readonly curve: Curve = { time_s: [], fire_W: [], thermometer_K: [], gas_K: [], steel_K: [] };
  /** worst imbalance of heat so far, as a share of what the fire gave or the pit lost, whichever is more */
  energyError = 0;
  /** worst net mass flow into a zone so far [kg/s] */
  massError = 0;
  private readonly recall = new Recall();
  private transient: Transient;
  private taken = 0;
  /** until when gas that has been lit chooses its way [s] */
  private chooses = -Infinity;

  /**
   * @param pit in which it starts
   * @param x unknowns at the start; nodes and stems count, the rest is settled when the first fire is set
   */
  constructor(
    public pit: Pit,
    x: Float64Array,
    private readonly options: TimelineOptions = {},
  ) {
    this.transient = new Transient(pit.solver, x, options.time ?? 0, this.recall);
  }

  get moment(): Moment {
    return this.transient.moment;
  }

  /** Steps taken, and evaluations of the balances, in the pit as it is now. */
  get steps(): number {
    return this.transient.steps;
  }

  get evaluations(): number {
    return this.transient.evaluations;
  }

  get fire(): number {
    return this.moment.x[this.pit.model.fire];
  }

  /** The lagging reading of the design's gauge now [K]. */
  get reading(): number {
    return this.moment.x[this.pit.model.nodeCount + this.pit.model.network.gauge];
  }

  /** What that gauge would settle at if all else stood still [K]. */
  settledReading(moment: Moment = this.moment): number {
    const { balances, model } = this.pit;
    balances.evaluate(moment.x, { mode: 'release', heat: Math.max(0, moment.x[model.fire]) });
    return balances.stems.settled(moment.x, model.network.gauge);
  }

  /** Go on in a variant of the pit; the next fire settles its gas. `adjust` may set temperatures of nodes. */
  enter(pit: Pit, adjust?: (x: Float64Array) => void): void {
    const { moment } = this;
    this.pit = pit;
    this.transient = new Transient(pit.solver, moment.x, moment.time, this.recall);
    this.transient.moment = { ...moment, x: moment.x.slice() };
    adjust?.(this.transient.moment.x);
  }

  /**
   * Set the fire: gas, flows and fire settle to it at once.
   *
   * @param fits whether what comes of it will do (default: anything)
   * @param firstStep from there on, if its error allows [s]
   * @param guess unknowns at which gas and flows once settled in this pit, much as they will now
   * @returns false: it does not settle or does not do, and nothing has changed
   */
  burn(
    demandAt: (t: number) => Demand,
    fits?: (moment: Moment) => boolean,
    firstStep = FIRST_STEP,
    guess?: Float64Array,
  ): boolean {
    if (!this.transient.change(demandAt, firstStep, fits, guess)) return false;
    this.record();
    return true;
  }

  /** Something begins now: the next step is a short one. */
  shorten(): void {
    this.transient.shorten(30);
  }

  /** What begins now is likely to go as it did when this was last said. */
  beginAgain(): void {
    this.recall.begin(this.moment.time);
  }

  /** Light the pit, cold till now. */
  light(demandAt: (t: number) => Demand): void {
    this.chooses = this.moment.time + CHOOSING.lasts;
    this.transient.goOn(demandAt, FIRST_STEP_LIT);
    this.record();
  }

  /**
   * One step, recorded.
   *
   * @returns 'step', 'event' where it ended on `stop`, or 'failed'
   */
  step(end: number, stop?: StopAt): 'step' | 'event' | 'failed' {
    if (++this.taken > MOST_STEPS) return 'failed';
    const { longestStep } = this.options;
    this.transient.system.tolerance = this.tolerance;
    const limit = longestStep === undefined ? end : Math.min(end, this.moment.time + longestStep);
    const took = this.transient.step(limit, stop);
    if (took !== 'failed') this.record();
    return took;
  }

  /** Burn on to `end` [s]. @returns false: the steps broke off */
  runTo(end: number): boolean {
    while (this.moment.time < end - CLOSE) if (this.step(end) === 'failed') return false;
    return true;
  }

  /**
   * What the gauge would settle at then if a fire [W] burned from now until a time; NaN: that can't be followed.
   * Nothing changes here.
   */
  foresee(heat: number, end: number): number {
    const { moment, pit, options } = this;
    const trial = new Timeline(pit, moment.x, { ...options, time: moment.time, follow: undefined });
    return trial.burn(() => ({ mode: 'release', heat })) && trial.runTo(end) ? trial.settledReading() : Number.NaN;
  }

  /**
   * Share of the tolerance that is allowed while gas chooses its way: soon after the match, and as long as it has not
   * come to draw.
   */
  private get share(): number {
    const { time } = this.moment;
    const demand = this.transient.system.at(time);
    const chokes = demand.mode === 'release' && this.fire < CHOOSING.chokes * demand.heat;
    if (time < CHOOSING.most && chokes) return CHOOSING.choked;
    return time < this.chooses ? CHOOSING.share : 1;
  }

  /** What a step from here may be off by. */
  private get tolerance(): typeof DEFAULT_TOLERANCE {
    const scale = (this.options.tolerance ?? 1) * this.share;
    return { absolute: DEFAULT_TOLERANCE.absolute * scale, relative: DEFAULT_TOLERANCE.relative * scale };
  }

  private record(): void {
    const { moment } = this;
    const { stride, trail } = this.transient;
    for (const each of trail) if (each !== moment) this.options.follow?.(each);
    this.options.follow?.(stride ?? moment);
    if (stride) this.fillIn(stride);
    this.put(moment.time, this.seen(moment.x));
    const turned = Math.max(moment.fireHeat, Math.abs(moment.lost));
    if (turned > 0) {
      this.energyError = Math.max(this.energyError, Math.abs(moment.fireHeat - moment.lost - moment.stored) / turned);
    }
    this.massError = Math.max(this.massError, moment.massError);
  }

  /** Points of the curve inside a step: not too far apart, and where the reading turns. */
  private fillIn({ before, after, shares, states, rates }: Stride): void {
    const { spacing } = this.options;
    if (spacing === undefined) return;
    const h = after.time - before.time;
    const seen = states.map((x) => this.seen(x));
    const ends = [seen[0][READING], seen[seen.length - 1][READING]] as const;
    const { nodeCount, network } = this.pit.model;
    const gauge = nodeCount + network.gauge;
    const rises = [h * rates[0][gauge], h * rates[1][gauge]] as const;
    const count = Math.ceil(h / spacing - CLOSE);
    const at = Array.from({ length: count - 1 }, (_, i) => (i + 1) / count);
    const turn = turnsAt(ends, rises);
    if (turn !== null && !at.includes(turn)) at.push(turn);
    for (const share of at.sort((a, b) => a - b)) {
      const weights = cubicWeights(shares, share);
      const values = seen[0].map((_, k) => weights.reduce((sum, weight, j) => sum + weight * seen[j][k], 0));
      // a stem follows its gas so closely that on its way it is not known as well as at the ends
      values[READING] = betweenEnds(ends, rises, share);
      // the cubic may dip under a fire that goes out
      values[FIRE] = Math.max(0, values[FIRE]);
      this.put(before.time + h * share, values);
    }
  }

  /** Fire, reading, gas and steel at x, as the curve has them. */
  private seen(x: Float64Array): number[] {
    const { pit } = this;
    const { network, fire, nodeCount } = pit.model;
    const { station, place } = network.stems[network.gauge];
    return [
      x[fire],
      x[nodeCount + network.gauge],
      place ? gasAtStem(pit, x, network.gauge) : stationGas(pit, x, station),
      stationSteel(pit, x, station),
    ];
  }

  private put(time: number, [fire, reading, gas, steel]: number[]): void {
    const { curve } = this;
    curve.time_s.push(time);
    curve.fire_W.push(fire);
    curve.thermometer_K.push(reading);
    curve.gas_K.push(gas);
    curve.steel_K.push(steel);
  }
}

/** Where the lagging thermometer first reads the design's target. */
export function readsTarget({ pit }: Timeline): StopAt {
  const { nodeCount, network } = pit.model;
  const gauge = nodeCount + network.gauge;
  return { left: ({ x }) => pit.design.fire.target - x[gauge], within: READ_WITHIN };
}

/** How far past the target a first reading may lie [K]. */
const READ_WITHIN = 0.02;
/** Which of what is seen fire and reading are. */
const [FIRE, READING] = [0, 1];
/** First step from the match on, while the fire comes up [s]. */
const FIRST_STEP_LIT = 4;
/**
 * In the first minutes after the match gas chooses its way, and little decides in a pit with more than one: so long [s]
 * steps may be off by this share of what they may later. While less than a share of the fire burns for want of air, at
 * most so long, by still less: such a pit stands on the brink before it draws, and how long it does grows out of all
 * that steps leave over.
 */
const CHOOSING = { lasts: 150, share: 0.25, chokes: 0.6, most: 2 * 3600, choked: 0.0625 };
/** First step after a change [s]. */
const FIRST_STEP = 30;
/** A draft that flutters takes steps without end. */
const MOST_STEPS = 10_000;
/** Times nearer than this are the same [s]. */
const CLOSE = 1e-6;
