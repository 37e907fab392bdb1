import { describe, expect, it } from 'vitest';
import type { CookLog, LogChannel } from '../../../src/fit/log/log.js';
import { formatLogFaults, readLog } from '../../../src/fit/log/readLog.js';
import { DESIGN, GOOD, HEADER, kelvin, READINGS, STEP } from './logTexts.js';
import { generator } from '../../design/randomDesign.js';
import { Dice, MUTATIONS, textOf, unspoiled, type Spoiled } from './mutations.js';

const NAMES = Object.keys(MUTATIONS);

/** A log spoiled in one to three ways, the first of them in turn so that every way comes up alone as well. */
function spoiled(seed: number): { log: Spoiled; ways: string[] } {
  const dice = new Dice(generator(seed + 1));
  const log = unspoiled();
  const extra = seed % 3;
  const ways = [NAMES[seed % NAMES.length], ...Array.from({ length: extra }, () => dice.pick(NAMES))];
  for (const way of ways) if (log.rows.length > 0 && log.header.length > 0) MUTATIONS[way](log, dice);
  return { log, ways };
}

/** No hole where a number or a name should stand; cells are quoted as they are. */
function expectPlain(text: string): void {
  expect(text.replace(/'[^']*'/g, '')).not.toMatch(/undefined|NaN|Infinity|\[object/);
  expect(text).not.toMatch(/[\u0000-\u0009\u000b-\u001f]/);
}

function rowsOf(text: string, header: string): number | undefined {
  const lines = text.replace(/^\uFEFF/, '').split(/\r\n|\n|\r/);
  const at = lines.findIndex((line) => line === header);
  if (at < 0) return undefined;
  return lines.slice(at + 1).filter((line) => /[^\s,;"]/.test(line) && !/^\s*#/.test(line)).length;
}

const leftOut = (log: CookLog, what: 'rows' | 'readings', where?: string): number =>
  log.notes
    .filter((note) => note.leftOut === what && (where === undefined || note.where === where))
    .reduce((sum, { count }) => sum + count, 0);

/** Every row and every reading is used or told. */
function expectCounted(log: CookLog, text: string, spoiled: Spoiled): void {
  const rows = rowsOf(text, spoiled.header.join(','));
  if (rows !== undefined) expect(log.rows).toBe(rows);
  const used = log.rows - leftOut(log, 'rows');
  const merged = log.notes.find(({ code }) => code === 'repeated-time')?.count ?? 0;
  for (const header of READINGS.map((c) => HEADER[c])) {
    if (!spoiled.header.includes(header)) continue;
    const readings = log.channels.find((each) => each.header === header)?.time_s.length ?? 0;
    const unused = log.notes.some(({ code, where }) => code === 'unused-column' && where === header);
    if (unused) continue;
    const told = leftOut(log, 'readings', header);
    expect(readings + told).toBeGreaterThanOrEqual(used);
    expect(readings + told).toBeLessThanOrEqual(used + merged);
  }
}

function expectSound(log: CookLog): void {
  expect(log.channels.length).toBeGreaterThan(0);
  const rising = (times: readonly number[]): boolean => times.every((time, i) => i === 0 || time > times[i - 1]);
  const curves = [log.fire, log.air, log.wind, log.intakes, log.damper].flatMap((curve) => curve ?? []);
  const lists = [
    ...log.channels.map(({ time_s, value_K }) => ({ time_s, value: value_K })),
    ...curves,
    ...(log.wood ? [{ time_s: log.wood.map((each) => each.time_s), value: log.wood.map((each) => each.mass_kg) }] : []),
  ];
  for (const { time_s, value } of lists) {
    expect(time_s.length).toBe(value.length);
    expect([...time_s, ...value].every(Number.isFinite)).toBe(true);
    expect(rising(time_s)).toBe(true);
    expect(time_s.every((time) => time >= 0 && time <= log.length_s)).toBe(true);
  }
  expect(log.door.every(({ from_s, to_s }) => from_s >= 0 && to_s > from_s && to_s <= log.length_s)).toBe(true);
  expect(log.interval_s).toBeGreaterThan(0);
}

/** The original's columns [K]. */
const ORIGINAL = HEADER.map((_, column) => GOOD.map((row) => kelvin(Number(row[column]))));

/** Readings that are not the original's at their time, at the start that fits best. */
function strangers(channel: LogChannel, starts: readonly number[]): number {
  const original = ORIGINAL[HEADER.indexOf(channel.header)];
  const { time_s: time, value_K: value } = channel;
  const count = (start: number): number => {
    let strange = 0;
    for (let i = 0; i < time.length; i++) {
      if (!(Math.abs(original[Math.round((time[i] + start) / STEP)] - value[i]) < 1e-6)) strange++;
    }
    return strange;
  };
  return starts.reduce((least, start) => (least === 0 ? 0 : Math.min(least, count(start))), Infinity);
}

/** Reads so many spoiled logs, the first of all that there are: each is read in part, all else told, or refused. */
export function readSpoiled(count: number): void {
  describe(`${count} spoiled logs`, () => {
    const seen = { logs: 0, faults: 0 };

    it.each(NAMES)('%s', (name) => {
      for (let seed = NAMES.indexOf(name); seed < count; seed += NAMES.length) {
        const { log: made, ways } = spoiled(seed);
        const text = textOf(made);
        const result = readLog(text, { fileName: 'cook.csv', design: DESIGN });
        try {
          if (result.faults) {
            seen.faults++;
            expect(result.faults.length).toBeGreaterThan(0);
            for (const fault of result.faults) {
              expect(fault.message.length).toBeGreaterThan(5);
              expect(fault.line).toBeLessThanOrEqual(text.split(/\r\n|\n|\r/).length);
              expect(formatLogFaults([fault])).toMatch(/^cook\.csv:[1-9]\d*:[1-9]\d*: \S/);
              expectPlain(formatLogFaults([fault]));
            }
            continue;
          }
          seen.logs++;
          expectSound(result.log);
          expectCounted(result.log, text, made);
          for (const { message, where, line, count } of result.log.notes) {
            expectPlain(message);
            // where and line are told in front of it
            expect(message.startsWith(where)).toBe(false);
            expect(count).toBeGreaterThan(0);
            expect(line === null || line >= 1).toBe(true);
          }
          if (made.otherUnit) continue;
          const starts = GOOD.flatMap((_, i) => [STEP * i, -STEP * i]);
          for (const channel of result.log.channels) {
            if (!HEADER.includes(channel.header)) continue;
            expect(strangers(channel, starts)).toBeLessThanOrEqual(made.touched);
          }
        } catch (error) {
          throw new Error(`seed ${seed}, ${ways.join(' + ')}: ${(error as Error).message}`, { cause: error });
        }
      }
    });

    it('are read in part and refused in part', () => {
      expect(seen.logs + seen.faults).toBe(count);
      expect(seen.logs).toBeGreaterThan(count / 4);
      expect(seen.faults).toBeGreaterThan(count / 8);
    });
  });
}
