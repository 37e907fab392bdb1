import { parse } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import { csvOf, curvesCsv } from '../../src/report/csv.js';
import { inertCell } from '../../src/report/curveCells.js';
import { sampleResult } from '../support/sampleResult.js';

const series = sampleResult.warmUp!.series;

describe('CSV of the curves', () => {
  it('has a row a time and three columns a station, units in the headings', () => {
    const [head, ...rows] = parse(curvesCsv(sampleResult, 'shop')) as string[][];
    expect(head.slice(0, 5)).toEqual([
      'time [min]',
      'fire [BTU/h]',
      'firebox gas [degF]',
      'firebox thermometer [degF]',
      'firebox steel [degF]',
    ]);
    expect(rows).toHaveLength(series.time_s.length);
    expect(head).toHaveLength(2 + 3 * series.stations.length + 2 * series.places.length);
  });

  it('gives the values of the result, back in SI within its rounding', () => {
    const [head, ...rows] = parse(curvesCsv(sampleResult, 'si')) as string[][];
    const column = head.indexOf('middle steel [degC]');
    const last = rows[rows.length - 1];
    expect(Number(last[0])).toBe(series.time_s[series.time_s.length - 1]);
    expect(Number(last[1])).toBeCloseTo(series.fire_W[series.fire_W.length - 1], 1);
    expect(Number(last[column])).toBeCloseTo(series.steel_K[series.steel_K.length - 1] - 273.15, 2);
  });

  it('is plain ASCII', () => {
    expect(curvesCsv(sampleResult, 'shop')).toMatch(/^[\x00-\x7f]*$/);
  });

  it('has headings alone when there are no curves', () => {
    expect(curvesCsv({ ...sampleResult, warmUp: null }, 'shop')).toBe('time [min],fire [BTU/h]\r\n');
  });
});

describe('a text cell', () => {
  it.each([
    ['=1+1', "'=1+1"],
    ['+1', "'+1"],
    ['-1', "'-1"],
    ['@cmd', "'@cmd"],
    ['a,b', '"a,b"'],
    ['say "hot"', '"say ""hot"""'],
    ['two\nlines', '"two\nlines"'],
    ['plain', 'plain'],
  ])('%j becomes %j', (text, cell) => expect(csvOf([[inertCell(text)]])).toBe(`${cell}\r\n`));
});
