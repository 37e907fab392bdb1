import { describe, expect, it } from 'vitest';
import { toJson, toJsonLine } from '../../src/report/json.js';
import { sampleResult } from '../support/sampleResult.js';

describe('JSON', () => {
  it('reads back as the same tree, keys in their order', () => {
    const back = JSON.parse(toJson(sampleResult));
    expect(back).toEqual(JSON.parse(JSON.stringify(sampleResult)));
    expect(Object.keys(back)).toEqual(Object.keys(sampleResult));
  });

  it('has the fire of a warning behind its place', () => {
    const warning = { code: 'x', message: 'y', where: 'throat', value: null, limits: null };
    const given = [{ ...warning, fire: 'hold fire' }, { ...warning, where: '', fire: 'assumed fire' }, warning];
    const places = ['throat, hold fire', 'assumed fire', 'throat'];
    const written = { warnings: places.map((where) => ({ ...warning, where })) };
    expect(toJson({ warnings: given })).toBe(toJson(written));
    expect(toJsonLine({ warnings: given })).toBe(JSON.stringify(written));
  });

  it('keeps a list of numbers on one line', () => {
    expect(toJson({ list: [1, null, 0.5], none: [], empty: {} })).toBe(
      '{\n  "list": [1, null, 0.5],\n  "none": [],\n  "empty": {}\n}\n',
    );
  });

  it.each([NaN, Infinity, -Infinity])('refuses %d, naming where it stands', (value) => {
    expect(() => toJson({ steady: { stations: [{ gas_K: value }] } })).toThrow('result.steady.stations[0].gas_K');
  });
});
