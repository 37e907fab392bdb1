import { expect } from 'vitest';
import type { Design } from '../../../src/design/design.js';
import { compareRows, tellingOfRow } from '../../../src/report/compareRows.js';
import { compareCsv } from '../../../src/report/compareCsv.js';
import { compareText } from '../../../src/report/text/compareText.js';
import type { Block } from '../../../src/report/sheets/blocks.js';
import { buyerSheet } from '../../../src/report/sheets/buyerSheet.js';
import { assemble, type Comparison, type Option } from '../../../src/study/compare/compare.js';
import { estimate } from '../../../src/study/estimate/estimate.js';
import { studyOption, USUAL_SETTINGS, type OptionStudy } from '../../../src/study/compare/studyOption.js';
import { shortfallLines } from '../../../src/study/compare/verdict.js';
import { exampleDesign } from '../../support/examples.js';
import { readPrinted } from '../../support/printed.js';

export const compared = (designs: Design[], study: (design: Design) => OptionStudy): Comparison => {
  const options = designs.map((design, i): Option => ({ label: `option ${i + 1}`, changes: [], design }));
  return assemble(
    options,
    options.map(({ design }) => study(design)),
    USUAL_SETTINGS,
  );
};
/** Estimates alone: events take long, and have no number where they are left out. */
export const quick = (design: Design): OptionStudy => ({ result: estimate(design), studies: null });

/** The same pit with fires from too small to ample, and with its vents next to shut. */
export function variedOf(design: Design): Design[] {
  const fire = (factor: number): Design => ({ ...design, fire: { ...design.fire, heat: factor * design.fire.heat } });
  const shut: Design = {
    ...design,
    firebox: { ...design.firebox, intakes: design.firebox.intakes.map((intake) => ({ ...intake, open: 0.01 })) },
  };
  return [design, fire(0.3), fire(0.6), fire(2), shut];
}

/** What falls short comes first everywhere, and what has no number is never called the same. */
export function checkFirstSaid(comparison: Comparison, told: string): void {
  const { options, findings, verdict } = comparison;
  const short = options.filter(({ shortfall }) => shortfall);
  const lines = verdict.split('\n');
  expect(new Set(lines.slice(0, short.length).map((line) => /^option \d+/.exec(line)?.[0])), told).toEqual(
    new Set(short.map(({ label }) => label)),
  );
  expect(lines.slice(0, short.length), told).toEqual(shortfallLines(comparison, 'shop').map(({ text }) => text));
  for (const line of lines.slice(short.length)) expect(line, told).toMatch(/^option \d+ instead of option 1\b/);

  for (const { label, differences, result, shortfall } of options) {
    const settled = result.assumed?.stations.find(({ name }) => name === result.design.gauge)?.thermometer_K ?? 0;
    const { steady, warmUp } = result;
    const reaches = warmUp ? warmUp.gauge_s !== null : settled > result.design.fire.target;
    const whole = steady !== null && reaches && warmUp?.soaked_s !== null;
    expect(shortfall === null, `${told} ${label}`).toBe(whole);
    for (const { key, baseline, value, difference, share, none } of differences) {
      if (baseline !== null && value !== null) continue;
      expect({ key, difference, share, none }, told).toEqual({ key, difference: null, share: null, none: false });
    }
  }
  for (const { label, same, hardly, buys, costs, lacks, gains, neither } of findings) {
    const pair = (key: string) =>
      options.find((each) => each.label === label)!.differences.find((each) => each.key === key)!;
    for (const key of [...same, ...hardly, ...buys, ...costs])
      expect(pair(key).difference, `${told} ${key}`).not.toBeNull();
    for (const key of [...lacks, ...gains, ...neither]) expect(pair(key).difference, `${told} ${key}`).toBeNull();
    const sentence = lines.find((line) => line.startsWith(`${label} instead of`));
    if (sentence?.includes('no difference in anything')) {
      expect([...hardly, ...buys, ...costs, ...lacks, ...gains, ...neither], told).toEqual([]);
    }
  }

  const text = compareText(comparison, 'shop').replace(/\s+/g, ' ');
  const sheet = buyerSheet(comparison, 'letter');
  const lead = sheet.blocks[0] as Extract<Block, { kind: 'lead' }>;
  for (const { label } of short) {
    expect(text.indexOf(`${label} `), told).toBeGreaterThan(0);
    expect(lead.text, told).toMatch(new RegExp(`^All of these: |${label}\\b`));
  }
  if (short.length > 0) {
    expect(text.slice(text.indexOf(' move these numbers ')), told).toMatch(
      /^ move these numbers option \d+ (never|has no|may never|reads)/,
    );
    expect(lead.text, told).toMatch(/^(option \d+ (never|has no|may never|reads)|(option \d+(, )?)+: |All of these: )/);
    expect(lead.text, told).not.toMatch(/time to soak is the same in all/);
  }
  expect(verdict + lead.text, told).not.toMatch(/Infinity/);
  expect(text + lead.text, told).not.toMatch(/NaN|undefined|\bnull\b/);
}

/** Whoever subtracts the two numbers beside a difference finds it, to the digit, in text and sheet. */
export function checkPrinted(comparison: Comparison, told: string): void {
  for (const system of ['shop', 'si'] as const) {
    for (const row of compareRows(comparison)) {
      const telling = tellingOfRow(row, system);
      const [base] = row.cells;
      for (const cell of row.cells.slice(1)) {
        const [value, from, difference] = [
          telling.number(cell.value),
          telling.number(base.value),
          telling.difference(cell),
        ];
        const all = `${told} ${row.measure.key}: ${from} ${value} ${difference}`;
        expect(value, all).not.toMatch(/NaN|Infinity|^-0(\.0+)?$/);
        if (value.endsWith('+') !== from.endsWith('+')) {
          expect(difference, all).toBe('–');
        } else if (cell.value === null || base.value === null) {
          expect(difference, all).toMatch(/^–?$/);
        } else if (row.measure.kind === 'plate') {
          expect(difference === 'same', all).toBe(value === from);
        } else if (difference === 'same') {
          expect(cell.none || value === from, all).toBe(true);
        } else {
          expect(readPrinted(difference), all).toBeCloseTo(readPrinted(value) - readPrinted(from), 6);
          expect(Math.sign(readPrinted(difference)), all).toBe(Math.sign(cell.difference!));
        }
        if (row.measure.kind === 'time' && value === from) expect(cell.none || cell.value === null, all).toBe(true);
      }
    }
  }
  expect(compareCsv(comparison, 'shop')).not.toMatch(/NaN|Infinity|undefined/);
}

/** An example with fires from too small to ample, events and all. */
export function checkExample(name: string): void {
  const comparison = compared(variedOf(exampleDesign(name)), studyOption);
  expect(comparison.options.some(({ shortfall }) => shortfall)).toBe(true);
  expect(comparison.options.some(({ shortfall }) => !shortfall)).toBe(true);
  checkFirstSaid(comparison, name);
  checkPrinted(comparison, name);
}
