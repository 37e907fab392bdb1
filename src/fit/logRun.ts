import type { Design } from '../design/design.js';
import { geometryOf } from '../design/geometryOf.js';
import { windAtPit } from '../design/windAtPit.js';
import type { CookLog, LogChannel, LogCurve } from './log/log.js';
import { openDoor } from '../study/events/door.js';
import { makePit, stationGas, stationSteel, type Pit } from '../network/pit.js';
import { stemOf } from '../network/places.js';
import type { Moment } from '../network/stride.js';
import { Transient } from '../network/transient.js';
import { variantOf } from '../study/events/variant.js';
import { interpolate } from '../solve/interpolate.js';
import { fireOfLog } from './logFire.js';
import { hotStart } from './hotStart.js';

/** First step after something changed [s]. */
const FIRST_STEP = 5;
/** A log with more steps than this is not followed: its draft flutters. */
const MOST_STEPS = 20_000;

/** How far and how finely a log is followed. */
export interface LogRunOptions {
  /** follow the log up to here [s] (default: to its end) */
  until?: number;
  /**
   * times at which steps end, from an earlier run: the same for all runs, so that a small change gives a small change
   */
  grid?: readonly number[];
  /** factor on the tolerances of the time steps (default 1) */
  tolerance?: number;
  /** no step is longer than this [s] (default: as long as its error allows) */
  longest?: number;
}

/** What a pit would have read under a log's fire, weather and events. */
export interface LogRun {
  /** a row a channel of the log, a number for each of its readings up to `until` [K] */
  computed: Float64Array[];
  /** times at which steps ended [s] */
  grid: number[];
  /** heat of the fire at the end of each step [W], as far as air let it burn */
  fire_W: number[];
  /** worst imbalance of heat, as a share of what the fire gave or the pit lost, and of mass [kg/s] */
  energyError: number;
  massError: number;
}

/**
 * Follow a pit through a log: the wood laid on or the heat logged, air and wind as measured, vents and door as they
 * stood.
 *
 * The pit starts at outdoor temperature, or where the log begins hot, settled at what its thermometers then read.
 *
 * @returns null: its draft keeps tipping over, so that it can't be followed
 */
export function runLog(design: Design, log: CookLog, options: LogRunOptions = {}): LogRun | null {
  return runLogs([design], log, options)[0];
}

/**
 * The same for several designs that differ a little, side by side: all step as the first does, which tells the others
 * where they will be. So each of them costs a fraction of a run, and small differences of the designs stay small in the
 * readings. Imbalances are told of the first; of the others losses are those of the last Newton step but one.
 *
 * @returns a run each; null for all where the first can't be followed
 */
export function runLogs(designs: readonly Design[], log: CookLog, options: LogRunOptions = {}): (LogRun | null)[] {
  const until = Math.min(options.until ?? log.length_s, log.length_s);
  const [first, ...others] = designs.map((design) => new Course(design, log, until, options.tolerance ?? 1));
  const breaks = breaksOf(log, until);
  const { grid, longest = Infinity } = options;
  for (let i = 1; i < breaks.length; i++) {
    const [from, to] = [breaks[i - 1], breaks[i]];
    if (to <= from) continue;
    for (const course of [first, ...others]) course.enter(from, to);
    let at = grid ? firstAfter(grid, first.time) : 0;
    while (first.time < to - CLOSE) {
      const aim = Math.min(to, grid && at < grid.length ? grid[at++] : first.time + longest);
      if (aim - first.time < CLOSE) continue;
      if (!(grid && first.stepTo(aim)) && !first.step(aim)) return designs.map(() => null);
      for (const course of others) course.follow(first);
    }
  }
  return [first, ...others].map((course) => (course.lost ? null : course.run));
}

/** A pit on its way through a log. */
class Course {
  readonly run: LogRun;
  /** it can't be followed any further */
  lost = false;
  private readonly pits: Pits;
  private readonly weather: (t: number) => [number, number];
  private readonly fire: (t: number) => number;
  private readonly readers: ChannelReader[];
  private pit: Pit;
  private moment: Moment;
  private transient: Transient | null = null;

  constructor(
    design: Design,
    log: CookLog,
    until: number,
    private readonly tolerance: number,
  ) {
    this.pits = new Pits(design, log);
    const start = hotStart(design, log);
    this.weather = weatherOf(design, log);
    this.fire = fireOfLog(design, log, start?.embers ?? 0);
    this.readers = log.channels.map((channel) => new ChannelReader(channel, until));
    this.run = {
      computed: this.readers.map(({ computed }) => computed),
      grid: [],
      fire_W: [],
      energyError: 0,
      massError: 0,
    };
    this.pit = this.pits.at(0);
    this.pit.model.turnOutdoors(...this.weather(0));
    const x = start ? start.x.slice() : this.pit.solver.coldState();
    this.moment = { time: 0, x, fireHeat: 0, lost: 0, stored: 0, loss: 0, massError: 0 };
    for (const reader of this.readers) reader.take([0], [reader.valueIn(this.pit, x)], 0, 0);
  }

  get time(): number {
    return this.moment.time;
  }

  /** Begin a stretch in which nothing starts or ends. */
  enter(from: number, to: number): void {
    if (this.lost) return;
    const { moment, fire, weather } = this;
    const now = this.pits.at(0.5 * (from + to));
    if (!this.transient || now !== this.pit) {
      this.pit = now;
      const transient = new Transient(now.solver, moment.x, moment.time);
      transient.moment = { ...moment, x: moment.x.slice() };
      const { absolute, relative } = transient.system.tolerance;
      transient.system.tolerance = { absolute: absolute * this.tolerance, relative: relative * this.tolerance };
      transient.system.repeats = true;
      transient.system.weatherAt = (t) => now.model.turnOutdoors(...weather(t));
      this.transient = transient;
    }
    // what is the case at a break belongs to the stretch that begins there
    this.transient.goOn((t) => ({ mode: 'release', heat: fire(Math.min(t, to)) }), FIRST_STEP);
  }

  /** One step that ends at a time, whatever its error. @returns false: it does not converge */
  stepTo(time: number, beside?: Course): boolean {
    return this.transient!.stepTo(time, beside?.transient ?? undefined) && this.note();
  }

  /** One step towards a time, as long as its error allows. @returns false: the pit can't be followed */
  step(time: number): boolean {
    return this.transient!.step(time) !== 'failed' && this.note();
  }

  /** Step to where another course has just stepped to, beside it where that goes. */
  follow(other: Course): void {
    if (this.lost || this.stepTo(other.time, other)) return;
    while (this.time < other.time - CLOSE && !this.lost) this.lost = !this.stepTo(other.time) && !this.step(other.time);
  }

  /** Take down what the last step brought. @returns false: there were too many steps */
  private note(): boolean {
    const { run, pit } = this;
    const before = this.moment;
    const { moment, stride } = this.transient!;
    this.moment = moment;
    for (const reader of this.readers) {
      const values = stride
        ? stride.states.map((x) => reader.valueIn(pit, x))
        : [reader.valueIn(pit, before.x), reader.valueIn(pit, moment.x)];
      reader.take(stride?.shares ?? [0, 1], values, before.time, moment.time);
    }
    run.grid.push(moment.time);
    run.fire_W.push(moment.x[pit.model.fire]);
    const turned = Math.max(moment.fireHeat, Math.abs(moment.lost));
    if (turned > 0) {
      run.energyError = Math.max(run.energyError, Math.abs(moment.fireHeat - moment.lost - moment.stored) / turned);
    }
    run.massError = Math.max(run.massError, moment.massError);
    return run.grid.length <= MOST_STEPS;
  }
}

/** Times nearer than this are the same [s]. */
const CLOSE = 1e-6;

function firstAfter(grid: readonly number[], time: number): number {
  let low = 0;
  let high = grid.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (grid[middle] <= time + CLOSE) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** Fills in what one channel would read at its times, step by step. */
class ChannelReader {
  readonly computed: Float64Array;
  private next = 0;
  private stem = -1;
  private stemOf: Pit | null = null;

  constructor(
    private readonly channel: LogChannel,
    until: number,
  ) {
    const { time_s } = channel;
    let count = time_s.length;
    while (count > 0 && time_s[count - 1] > until) count--;
    this.computed = new Float64Array(count);
  }

  /** What the channel measures, at the unknowns x of a pit [K]. */
  valueIn(pit: Pit, x: Float64Array): number {
    const { station, spot, measured } = this.channel;
    if (measured === 'gas') return stationGas(pit, x, station);
    if (measured === 'steel') return stationSteel(pit, x, station);
    if (this.stemOf !== pit) {
      this.stem = pit.model.nodeCount + stemOf(pit.model.network, station, spot);
      this.stemOf = pit;
    }
    return x[this.stem];
  }

  /**
   * Readings between two times, on the polynomial through values at shares of the way (Newton's divided differences).
   */
  take(shares: readonly number[], values: number[], from: number, to: number): void {
    const { time_s } = this.channel;
    const n = values.length;
    for (let order = 1; order < n; order++) {
      for (let i = n - 1; i >= order; i--) values[i] = (values[i] - values[i - 1]) / (shares[i] - shares[i - order]);
    }
    while (this.next < this.computed.length && time_s[this.next] <= to + CLOSE) {
      const at = Math.min(1, (time_s[this.next] - from) / (to - from));
      let sum = values[n - 1];
      for (let i = n - 2; i >= 0; i--) sum = values[i] + (at - shares[i]) * sum;
      this.computed[this.next++] = sum;
    }
  }
}

/** The pits that a log passes through: as built, with other vents, with the door open. Each is built once. */
class Pits {
  private readonly built = new Map<string, Pit>();

  constructor(
    private readonly design: Design,
    private readonly log: CookLog,
  ) {}

  at(t: number): Pit {
    const { log } = this;
    const open = log.door.some(({ from_s, to_s }) => t >= from_s && t < to_s);
    const intakes = stepAt(log.intakes, t);
    const damper = stepAt(log.damper, t);
    const key = `${open} ${intakes} ${damper}`;
    let pit = this.built.get(key);
    if (!pit) this.built.set(key, (pit = this.make(open, intakes, damper)));
    return pit;
  }

  private make(open: boolean, intakes: number | null, damper: number | null): Pit {
    const { design } = this;
    const changed =
      intakes === null && damper === null
        ? design
        : {
            ...design,
            firebox: {
              ...design.firebox,
              intakes: design.firebox.intakes.map((each) => ({ ...each, open: intakes ?? each.open })),
            },
            stacks: design.stacks.map((each) => ({ ...each, damper: damper ?? each.damper })),
          };
    const pit = makePit(changed, geometryOf(changed));
    return open ? variantOf(pit, openDoor(changed)) : pit;
  }
}

/** The last value given up to a time; before the first one, that. */
function stepAt(curve: LogCurve | null, t: number): number | null {
  if (!curve || curve.value.length === 0) return null;
  let value = curve.value[0];
  for (let i = 0; i < curve.time_s.length && curve.time_s[i] <= t; i++) value = curve.value[i];
  return value;
}

/** Times at which something starts or ends, the ends of the log among them. */
function breaksOf(log: CookLog, until: number): number[] {
  const steps = (curve: LogCurve | null) =>
    (curve?.time_s ?? []).filter((_, i) => i > 0 && curve!.value[i] !== curve!.value[i - 1]);
  const times = [
    ...(log.wood ?? []).map(({ time_s }) => time_s),
    ...steps(log.intakes),
    ...steps(log.damper),
    ...log.door.flatMap(({ from_s, to_s }) => [from_s, to_s]),
  ];
  const inside = [...new Set(times)].filter((t) => t > 0 && t < until).sort((a, b) => a - b);
  return [0, ...inside, until];
}

/** Length over which measured air and wind are averaged before the pit feels them [s]. */
const WEATHER_STEP = 900;

/** Air [K] and wind [m/s] against time: means over quarter hours, straight between their middles; else the design's. */
function weatherOf(design: Design, log: CookLog): (t: number) => [number, number] {
  const air = log.air && averaged(log.air, log.length_s);
  const wind = log.wind && averaged(log.wind, log.length_s);
  const otherwise = windAtPit(design);
  return (t) => [
    air ? interpolate(air.time_s, air.value, t) : design.site.air,
    wind ? interpolate(wind.time_s, wind.value, t) : otherwise,
  ];
}

function averaged(curve: LogCurve, length: number): LogCurve {
  const count = Math.max(1, Math.round(length / WEATHER_STEP));
  const width = length / count;
  const sums = new Float64Array(count);
  const seen = new Float64Array(count);
  curve.time_s.forEach((t, i) => {
    const at = Math.min(count - 1, Math.floor(t / width));
    sums[at] += curve.value[i];
    seen[at]++;
  });
  const there = [...seen.keys()].filter((i) => seen[i] > 0);
  return { time_s: there.map((i) => (i + 0.5) * width), value: there.map((i) => sums[i] / seen[i]) };
}
