import { describe, expect, it } from 'vitest';
import { fit } from '../../src/fit/fit.js';
import type { FitResult } from '../../src/fit/fitResult.js';
import { fitUnknownsOf } from '../../src/study/spread/unknowns.js';
import { lagged } from '../../src/fit/lag.js';
import { chance } from './syntheticLog.js';
import { ACCURACY, expectFound, plain, without, input, found, pit, logOf, TWO } from './fitLogs.js';

describe('a fit', () => {
  it('finds one that the log was made with, and says how surely', () => {
    expectFound({ innerConvection: TWO.innerConvection }, { hours: 2.5 });
  });

  it('finds two that the log was made with, and says how surely', () => {
    expect(expectFound(TWO).fitted.values.map(({ path, scale }) => [path, scale])).toEqual([
      ['innerConvection', 'is'],
      ['wood.heat', 'times'],
    ]);
  });

  it('tells that a log knows no fire, and that it began hot', () => {
    const blind = logOf({}, { wood: null, hours: 2 });
    expect(fit(plain(), [input(blind)], without(['fire.heat']))!.warnings.map(({ code }) => code)).toContain(
      'no-fire-in-log',
    );
    const log = logOf({}, { wood: [{ time_s: 0, mass_kg: 3 }] });
    const late = {
      ...log,
      wood: [],
      channels: log.channels.map(({ time_s, value_K, ...rest }) => {
        const from = time_s.findIndex((t) => t >= 1800);
        return { ...rest, time_s: time_s.slice(from).map((t) => t - time_s[from]), value_K: value_K.slice(from) };
      }),
    };
    const result = fit(plain(), [input(late)], without(['innerConvection']))!;
    expect(result.warnings.map(({ code }) => code)).toContain('hot-start');
    expect(result.cooks[0].from_s).toBe(3600);
  });

  it('never looks at the part that is held back', () => {
    const log = logOf(TWO);
    const spoilt = {
      ...log,
      channels: log.channels.map((channel) => ({
        ...channel,
        value_K: channel.value_K.map((value, i) => (channel.time_s[i] > 0.7 * log.length_s ? value + 40 : value)),
      })),
    };
    const [a, b] = [log, spoilt].map((each) => fit(plain(), [input(each)], without(Object.keys(TWO)))!);
    expect(b.parameters).toEqual(a.parameters);
    expect(b.quality.fitted_K).toBe(a.quality.fitted_K);
    expect(b.quality.heldBack_K!).toBeGreaterThan(30);
    expect(a.quality.heldBack_K!).toBeLessThan(0.65);
  });

  it('tells no quality where nothing is held back, and then knows more', () => {
    const log = logOf(TWO);
    const [part, all] = [0.5, 0].map((heldBack) =>
      fit(plain(), [input(log)], { ...without(Object.keys(TWO)), heldBack }),
    );
    expect(all!.quality.heldBack_K).toBeNull();
    expect(all!.fitted.logs[0].error_K).toBeNull();
    expect(found(all!, 'innerConvection').left).toBeLessThan(found(part!, 'innerConvection').left);
  });

  it('stays within the spreads, and says so where a log pushes against them', () => {
    const edge = fitUnknownsOf(plain()).find(({ path }) => path === 'innerConvection')!.high;
    const beyond = (times: number) =>
      fit(plain(), [input(logOf({ innerConvection: times * edge }))], without(['innerConvection']))!;
    const somewhat = beyond(1.3);
    expect(found(somewhat, 'innerConvection').value).toBe(edge);
    expect(found(somewhat, 'innerConvection').atEdge).toBe(true);
    expect(somewhat.warnings.map(({ code }) => code)).toContain('at-edge-of-spread');
    // so far beyond that nothing fits: the errors tell it, and the estimate is hardly known
    const far = beyond(2);
    expect(found(far, 'innerConvection').value).toBeLessThanOrEqual(edge);
    expect(found(far, 'innerConvection').told).toBe(false);
    expect(far.warnings.map(({ code }) => code)).toContain('more-than-noise');
  });

  it('is not moved by readings that are far out', () => {
    const log = logOf(TWO);
    const { uniform } = chance(11);
    const spoilt = {
      ...log,
      channels: log.channels.map((channel) => ({
        ...channel,
        value_K: channel.value_K.map((value) => (uniform() < 0.05 ? value + 60 : value)),
      })),
    };
    const result = fit(plain(), [input(spoilt)], without(Object.keys(TWO)))!;
    for (const [path, value] of Object.entries(TWO)) {
      expect(found(result, path).low).toBeLessThan(value);
      expect(found(result, path).high).toBeGreaterThan(value);
    }
  });

  it('finds a probe that reads off, and takes it off its prediction', () => {
    const log = logOf(TWO, {}, { offsets_K: [0, 5, 0] });
    const result = fit(plain(), [input(log)], without(Object.keys(TWO)))!;
    const [fireEnd, middle] = result.cooks[0].channels;
    expect(middle.offset_K - fireEnd.offset_K).toBeGreaterThan(3.5);
    expect(result.quality.heldBack_K!).toBeLessThan(0.8);
    expect(result.warnings.find(({ code }) => code === 'probe-reads-off')?.where).toBe('middle');
  });

  it('widens its intervals where errors hang together, and says that the model lacks something', () => {
    const log = logOf(TWO);
    const swaying = {
      ...log,
      channels: log.channels.map((channel) => ({
        ...channel,
        value_K: channel.value_K.map((value, i) => value + 4 * Math.sin(channel.time_s[i] / 400)),
      })),
    };
    const [calm, swayed] = [log, swaying].map((each) => fit(plain(), [input(each)], without(Object.keys(TWO)))!);
    const width = (result: FitResult) => {
      const { low, high } = found(result, 'innerConvection').alone;
      return high - low;
    };
    expect(width(swayed)).toBeGreaterThan(5 * width(calm));
    expect(swayed.warnings.map(({ code }) => code)).toContain('more-than-noise');
    expect(calm.warnings.map(({ code }) => code)).not.toContain('more-than-noise');
  });

  it('says which estimate the log would rather move', () => {
    const log = logOf({ 'estimates.stemFill': 0.9 });
    const { warnings } = fit(plain(), [input(log)], without(['innerConvection']))!;
    expect(warnings.find(({ code }) => code === 'moves-what-is-not-fitted')?.message).toContain(
      'estimates.stemFill (more)',
    );
  });

  it('finds how far the logger lags', () => {
    const log = logOf(TWO, { every_s: 20 });
    const late = {
      ...log,
      channels: log.channels.map((channel) => ({
        ...channel,
        value_K: Array.from(lagged(channel.time_s, Float64Array.from(channel.value_K), 45)),
      })),
    };
    const [prompt, slow] = [log, late].map((each) => fit(plain(), [input(each)], without(Object.keys(TWO)))!.cooks[0]);
    expect(prompt.lag_s).toBeLessThan(3 * prompt.lagDeviation_s + 1);
    expect(Math.abs(slow.lag_s - 45)).toBeLessThan(5);
  });

  it('gives the same numbers every time', () => {
    const log = logOf(TWO);
    const [a, b] = [0, 1].map(() => fit(plain(), [input(log)], without(Object.keys(TWO)))!);
    expect(b).toEqual(a);
  });

  it('leaves alone what the log can not tell, with all of its spread', () => {
    // the share of oxygen that burns matters only to a fire that lacks air, which this one never does
    const path = 'estimates.oxygenUse';
    const log = logOf(
      {},
      {
        wood: [
          { time_s: 0, mass_kg: 1.5 },
          { time_s: 3600, mass_kg: 1.5 },
        ],
      },
    );
    const each = found(fit(plain(), [input(log)], without([path]))!, path);
    expect(each.value).toBeCloseTo(each.before, 3);
    expect(each.left).toBeGreaterThan(0.99);
    expect(each.told).toBe(false);
    expect(each.low).toBeGreaterThanOrEqual(each.spread.low);
    expect(each.high).toBeLessThanOrEqual(each.spread.high);
  });
});

describe('several logs', () => {
  const first = logOf(TWO, {}, { noise_K: 1.5 }, 21);
  const second = logOf(TWO, {}, { noise_K: 1.5 }, 22);
  const paths = Object.keys(TWO);
  const alone = fit(plain(), [input(first, 'a')], without(paths))!;
  const together = fit(plain(), [input(first, 'a'), input(second, 'b')], without(paths))!;

  it('fitted at once tell more than one', () => {
    for (const path of paths) expect(found(together, path).left).toBeLessThan(found(alone, path).left);
    expect(together.fitted.logs.map(({ hash }) => hash)).toEqual(['a', 'b']);
    expect(together.cooks).toHaveLength(2);
  });

  it('fitted one after the other tell about the same as at once', () => {
    const rested = pit({
      innerConvection: found(alone, 'innerConvection').value,
      'wood.heat': found(alone, 'wood.heat').value,
    });
    rested.fitted = {
      ...alone.fitted,
      values: alone.fitted.values.map((each, i) => ({ ...each, own: alone.parameters[i].before })),
    };
    const then = fit(rested, [input(second, 'b')], without([]))!;
    for (const path of paths) {
      const [a, b] = [found(then, path), found(together, path)];
      expect(Math.abs(a.value - b.value)).toBeLessThan(0.5 * (b.high - b.low));
      expect((a.high - a.low) / (b.high - b.low)).toBeGreaterThan(0.5);
      expect((a.high - a.low) / (b.high - b.low)).toBeLessThan(2);
    }
    expect(then.fitted.logs.map(({ hash }) => hash)).toEqual(['a', 'b']);
    // factors count from what the design itself says, over both fits
    const [, heat] = then.fitted.values;
    expect(heat.scale).toBe('times');
    expect(heat.value * plain().wood.heat).toBeCloseTo(found(then, 'wood.heat').value, -2);
  });
});

describe('what is fitted when nothing is asked for', () => {
  it('tells wind of the day apart, and does not carry it to another', () => {
    const log = { ...logOf(TWO), wind: null };
    const result = fit(plain(), [input(log)], {
      heldBack: 0.3,
      accuracy: ACCURACY,
      paths: ['innerConvection', 'site.wind'],
    })!;
    expect(result.parameters.map(({ path }) => path)).toContain('site.wind');
    expect(result.fitted.values.map(({ path }) => path)).toEqual(['innerConvection']);
    expect(result.fitted.correlation).toEqual([[1]]);
  });
});
