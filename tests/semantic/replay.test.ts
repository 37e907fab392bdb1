import { describe, it } from 'vitest';
import { readDesign } from '../../src/design/read.js';
import { estimate } from '../../src/study/estimate.js';
import type { WarmUp } from '../../src/study/result.js';
import { shopDesign } from '../design/shopDesign.js';
import type { Failure } from './checks.js';
import { replay, type Replay } from './replay.js';
import { Findings, LONG_RUN } from './telling.js';

const DESIGNS = LONG_RUN ? 240 : 8;
const BATCH = 8;
const FIRST = 5000;

/**
 * How far the replay may be off: the gas's own heat, which a quasi-steady run leaves out, delays it by some tens of seconds [s];
 * Euler's error is a few percent of a time; a thermometer that creeps up to its target counts by what it reads [K].
 */
const OFF = { seconds: 40, share: 0.035, reading: 1 };
/** The same for the share of its heat that the steel holds. */
const SHARE = 0.015;

function compared({ gauge_s, soaked_s, series }: WarmUp, target: number, again: Replay): Failure[] {
  const failures: Failure[] = [];
  const late = again.gauge - gauge_s!;
  // what the later of the two reads when the earlier reads the target
  const [times, readings] = late > 0 ? [again.time, again.reading] : [series.time_s, series.thermometer_K];
  const reads = readings[times.findIndex((t) => t >= Math.min(gauge_s!, again.gauge))] - target;
  if (Math.abs(late) > Math.max(OFF.seconds, OFF.share * gauge_s!) && reads < -OFF.reading) {
    const detail = `${gauge_s} s, replay ${again.gauge} s: ${reads} K under the target when the other reads it`;
    failures.push({ kind: 'the replay reads the target at another time', detail });
  }
  const shares = again.share.filter((_, i) => again.time[i] - again.gauge >= soaked_s! - gauge_s!);
  const first = again.share.findIndex((_, i) => again.time[i] - again.gauge >= soaked_s! - gauge_s!);
  if (first < 0) return failures;
  const least = Math.min(...shares);
  if (least < 0.9 - SHARE) failures.push({ kind: 'the replay holds less heat once soaked', detail: `${least} of it` });
  if (soaked_s! > gauge_s! + OFF.seconds && again.share[first] > 0.9 + SHARE) {
    failures.push({ kind: 'the replay soaks sooner', detail: `${again.share[first]} of its heat at ${soaked_s} s` });
  }
  return failures;
}

describe('a warm-up stepped once more by another way', () => {
  for (let from = FIRST; from < FIRST + DESIGNS; from += BATCH) {
    it(`designs ${from} to ${from + BATCH - 1}`, { timeout: 240_000 }, () => {
      const findings = new Findings();
      for (let seed = from; seed < from + BATCH; seed++) {
        const tree = shopDesign(seed);
        const { design } = readDesign(JSON.stringify(tree), { fileName: `seed ${seed}` });
        const { warmUp } = estimate(design!);
        if (warmUp?.gauge_s == null || warmUp.soaked_s === null) continue;
        const again = replay(design!, warmUp, 1.2 * (warmUp.soaked_s - warmUp.gauge_s) + 60);
        findings.add(
          seed,
          tree,
          again ? compared(warmUp, design!.fire.target, again) : [{ kind: 'no replay', detail: '' }],
        );
      }
      findings.tell();
    });
  }
});
