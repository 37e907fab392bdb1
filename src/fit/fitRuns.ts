/** Runs of a pit through the logs of a fit. */
import type { Design } from '../design/design.js';
import type { CookLog } from './log/log.js';
import { runLogs, type LogRun } from './logRun.js';
import { designAt, type FitParameter } from './parameters.js';

/** The part of a log that is fitted: readings `from` to `to` (excluded) of each channel. */
export interface FitPart {
  log: CookLog;
  until_s: number;
  from: number[];
  to: number[];
}

/** Runs with one coordinate a step aside; null where the pit can't be followed there. */
export interface Beside {
  runs: LogRun[] | null;
  step: number;
}

/** Factor on the tolerances of the time steps: errors well below any probe's noise. */
export const TOLERANCE = 0.1;
/**
 * No step is longer than this [s]. A fire that air comes to limit within a long step makes an error that depends on
 * where in the step that is, and with estimates a hair aside it is elsewhere. Slopes then jump from place to place, by
 * a tenth for the intakes of the made-up cook: that passes for knowledge, and stops the search. Steps of a minute leave
 * about what steps of 15 s do.
 */
const LONGEST_STEP = 60;
/** Step of the coordinates for slopes: large against what the solver leaves over, small against their spread. */
const SLOPE_STEP = 0.025;

/** All runs step on times that are laid down once, and are kept by the coordinates that they were asked for. */
export class FitRuns {
  energyError = 0;
  massError = 0;
  private readonly grids: number[][] = [];
  private readonly known = new Map<string, LogRun[] | null>();
  private readonly knownBeside = new Map<string, Beside[]>();

  constructor(
    private readonly design: Design,
    private readonly parameters: readonly FitParameter[],
    private readonly parts: readonly FitPart[],
    private readonly onRun: () => void,
  ) {}

  /** Lay down the times of the steps as they come out at q. @returns false: the pit can't be followed there */
  layGrid(q: readonly number[]): boolean {
    this.known.clear();
    this.knownBeside.clear();
    this.grids.length = 0;
    this.beside(q);
    const runs = this.at(q);
    runs?.forEach(({ grid }) => this.grids.push(grid));
    return runs !== null;
  }

  /**
   * Take times and runs from those of the same logs with these estimates among their own. @param own, its: where both
   * start
   */
  goOnFrom(other: FitRuns, own: readonly number[], its: readonly number[]): void {
    const beside = other.beside(its);
    const among = this.parameters.map(({ unknown: { path } }) =>
      other.parameters.findIndex(({ unknown }) => unknown.path === path),
    );
    this.grids.push(...other.grids);
    this.known.set(own.join(' '), other.at(its));
    this.knownBeside.set(
      own.join(' '),
      among.map((k) => beside[k]),
    );
  }

  /**
   * Runs with each coordinate a step aside, towards the inside of its bounds and away from the kink of a spread at 0.
   */
  beside(q: readonly number[]): Beside[] {
    const key = q.join(' ');
    const known = this.knownBeside.get(key);
    if (known) return known;
    const steps = q.map((value, k) => {
      const outwards = value < 0 ? -1 : 1;
      const inside = value + outwards * SLOPE_STEP;
      const { low, high } = this.parameters[k];
      return SLOPE_STEP * (inside >= low && inside <= high ? outwards : -outwards);
    });
    const places = steps.map((step, k) => q.map((value, j) => (j === k ? value + step : value)));
    const [first, ...runs] = this.follow([q, ...places].map((each) => designAt(this.design, this.parameters, each)));
    if (!this.known.has(key)) this.known.set(key, first);
    const beside = steps.map((step, k) => ({ runs: runs[k], step }));
    this.knownBeside.set(key, beside);
    return beside;
  }

  /** Runs at q, one a log; null where the pit can't be followed. */
  at(q: readonly number[]): LogRun[] | null {
    const key = q.join(' ');
    let runs = this.known.get(key);
    if (runs === undefined) {
      [runs] = this.follow([designAt(this.design, this.parameters, q)]);
      this.known.set(key, runs);
    }
    return runs;
  }

  /**
   * All logs with some designs that lie beside the first one, on the times that are laid down; null: not to be
   * followed.
   */
  follow(designs: readonly Design[]): (LogRun[] | null)[] {
    const all = this.parts.map(({ log, until_s }, l) => {
      const options = { until: until_s, grid: this.grids[l], tolerance: TOLERANCE, longest: LONGEST_STEP };
      const runs = runLogs(designs, log, options);
      for (let k = 0; k < runs.length; k++) this.onRun();
      this.energyError = Math.max(this.energyError, runs[0]?.energyError ?? 0);
      this.massError = Math.max(this.massError, runs[0]?.massError ?? 0);
      return runs;
    });
    return designs.map((_, k) => {
      const runs = all.map((each) => each[k]);
      return runs.every((run) => run !== null) ? runs : null;
    });
  }
}
