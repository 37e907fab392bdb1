import type { Demand } from '../network/balances.js';
import { stationGas, stationSteel, type Pit } from './pit.js';
import type { StationSeries, WarmUp } from './result.js';
import { Transient, type Moment } from './transient.js';

/** The fire counts as soaked when it is within this share above the steady one. */
const SOAKED_SHARE = 0.1;
/** The clock starts with the match; the gas is first solved when the fire has burned this long [s]. */
const FIRST_MOMENT = 1;
/** How often the fire is let rest before no fire is said to hold the gauge from there. */
const MOST_RESTS = 3;
/** Longest warm-up that is followed [s]. */
const LONGEST = 24 * 3600;
/** Curves go on this far past the soaked time, or past the settling of a fire that cannot reach the target. */
const AFTERWARDS = 1.25;

/** Shares of each step at which the curves are filled in. */
const BETWEEN = [0.25, 0.5, 0.75];

export interface WarmUpOptions {
  /** fire that holds the target in the end [W]; null: none does */
  holdFire: number | null;
  /** settled reading of the gauge under the assumed fire in the end [K] */
  assumedReading: number;
  /** factor on the tolerances of the time steps (default 1), for step studies */
  tolerance?: number;
  /** follow a pit that soaks at least this far [s], so that curves of several runs can be laid over each other */
  until?: number;
}

export interface WarmUpRun {
  warmUp: WarmUp;
  /** worst imbalances over the run */
  energyError: number;
  massError: number;
  evaluations: number;
  /** false: the run broke off because no step length converged */
  finished: boolean;
}

/**
 * Warm-up from cold: the assumed fire, rising as 1 - exp(-t/rise), until the lagged thermometer reads the target; from then
 * on just the fire that keeps it there. Gauge time, soaked time, wood to each, and the curves of every station.
 */
export function runWarmUp(pit: Pit, options: WarmUpOptions): WarmUpRun {
  const { design, settler, model, balances } = pit;
  const { fire } = design;
  const gauge = model.nodeCount + model.network.gauge;
  const full = (t: number): Demand => ({ mode: 'release', heat: fire.heat * (1 - Math.exp(-t / fire.rise)) });
  const hold = (): Demand => ({ mode: 'hold', target: fire.target });
  const burning = settler.burningState(0, settler.coldState());
  const out = (): Demand => ({ mode: 'release', heat: 0 });
  const run = new Transient(settler, burning, FIRST_MOMENT);
  const scale = options.tolerance ?? 1;
  const { absolute, relative } = run.system.tolerance;
  run.system.tolerance = { absolute: absolute * scale, relative: relative * scale };
  const record = new Recorder(pit);
  const outcome: WarmUp = {
    gauge_s: null,
    soaked_s: null,
    woodToGauge_kg: null,
    woodToSoaked_kg: null,
    series: record.series,
    steps: 0,
  };
  const finish = (finished: boolean): WarmUpRun => ({
    warmUp: { ...outcome, steps: run.steps },
    energyError: record.energyError,
    massError: record.massError,
    evaluations: run.evaluations,
    finished,
  });
  const outdoors = model.network.outdoors.temperature;
  record.cold(outdoors);
  if (!run.change(full, 2)) return finish(false);
  record.add(run.moment);
  const wood = (moment: Moment) => moment.fireHeat / design.wood.heat;
  const reads = (moment: Moment) => moment.x[gauge] - fire.target;

  // 1: full fire up to the target
  const reachable = options.holdFire !== null && options.assumedReading > fire.target;
  const near = outdoors + 0.99 * (options.assumedReading - outdoors);
  const settledDown = (moment: Moment) => moment.x[gauge] - near;
  for (;;) {
    const took = run.step(LONGEST, reachable ? reads : settledDown);
    if (took === 'failed') return finish(false);
    record.step(run);
    if (took === 'event' || run.moment.time >= LONGEST) break;
  }
  if (!reachable || run.moment.time >= LONGEST) return finish(true);
  outcome.gauge_s = run.moment.time;
  outcome.woodToGauge_kg = wood(run.moment);

  // 2: just the fire that holds it; none at all while the pit reads the target without
  const settledOver = (moment: Moment) => {
    balances.evaluate(moment.x, out());
    return balances.settled(moment.x, model.network.gauge) - fire.target;
  };
  for (let rests = 0; !run.change(hold, 5) || run.moment.x[model.fire] < 0; rests++) {
    if (rests === MOST_RESTS || !run.change(out, 5) || settledOver(run.moment) <= 0) return finish(false);
    record.add(run.moment);
    for (;;) {
      const took = run.step(LONGEST, settledOver);
      if (took === 'failed') return finish(false);
      record.step(run);
      if (run.moment.time >= LONGEST) return finish(true);
      if (took === 'event') break;
    }
  }
  const steady = options.holdFire!;
  const from = run.moment.x[model.fire] > steady ? 1 + SOAKED_SHARE : 1 - SOAKED_SHARE;
  const apart = (moment: Moment) => moment.x[model.fire] - from * steady;
  let soaked = Math.abs(run.moment.x[model.fire] / steady - 1) <= SOAKED_SHARE;
  record.add(run.moment);
  while (!soaked) {
    const took = run.step(LONGEST, apart);
    if (took === 'failed') return finish(false);
    record.step(run);
    if (run.moment.time >= LONGEST) return finish(true);
    soaked = took === 'event';
  }
  outcome.soaked_s = run.moment.time;
  outcome.woodToSoaked_kg = wood(run.moment);

  // 3: a little further, for the curves
  const end = Math.max(AFTERWARDS * run.moment.time, options.until ?? 0);
  while (run.moment.time < end - 1e-6) {
    if (run.step(end) === 'failed') break;
    record.step(run);
  }
  return finish(true);
}

/** Collects curves and worst imbalances. */
class Recorder {
  readonly series: WarmUp['series'];
  energyError = 0;
  massError = 0;
  private readonly stations: StationSeries[];

  constructor(private readonly pit: Pit) {
    const { stems } = pit.model.network;
    this.stations = stems.map((stem) => ({
      name: stem.station as StationSeries['name'],
      thermometer_K: [],
      gas_K: [],
      steel_K: [],
    }));
    const own = this.stations[pit.model.network.gauge];
    this.series = {
      time_s: [],
      fire_W: [],
      thermometer_K: own.thermometer_K,
      gas_K: own.gas_K,
      steel_K: own.steel_K,
      stations: this.stations,
      fire_J: [],
      lost_J: [],
      stored_J: [],
    };
  }

  /** The pit before the match. */
  cold(outdoors: number): void {
    this.push(0, 0, 0, 0, 0);
    for (const s of this.stations) {
      s.thermometer_K.push(outdoors);
      s.gas_K.push(outdoors);
      s.steel_K.push(outdoors);
    }
  }

  /** The last step of a run, with moments between for the curves. */
  step(run: Transient): void {
    for (const moment of run.within(BETWEEN)) this.add(moment);
    this.add(run.moment);
  }

  add(moment: Moment): void {
    const { pit } = this;
    const { x } = moment;
    this.push(moment.time, x[pit.model.fire], moment.fireHeat, moment.lost, moment.stored);
    this.stations.forEach((s, i) => {
      s.thermometer_K.push(x[pit.model.nodeCount + i]);
      s.gas_K.push(stationGas(pit, x, s.name));
      s.steel_K.push(stationSteel(pit, x, s.name));
    });
    this.massError = Math.max(this.massError, moment.massError);
    if (moment.fireHeat > 0) {
      const off = Math.abs(moment.fireHeat - moment.lost - moment.stored) / moment.fireHeat;
      this.energyError = Math.max(this.energyError, off);
    }
  }

  private push(time: number, fire: number, heat: number, lost: number, stored: number): void {
    this.series.time_s.push(time);
    this.series.fire_W.push(fire);
    this.series.fire_J.push(heat);
    this.series.lost_J.push(lost);
    this.series.stored_J.push(stored);
  }
}
