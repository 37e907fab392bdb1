import { describe, expect, it } from 'vitest';
import type { Warning, WhichFire } from '../../src/study/estimate/result.js';
import { warningWords, whereWords } from '../../src/words/warningWords.js';
import { estimate } from '../../src/study/estimate/estimate.js';
import { exampleDesign } from '../support/examples.js';
import { sampleDesign } from '../support/sampleResult.js';

const warning = (code: string, where: string, more: Partial<Warning> = {}): Warning => ({
  code,
  message: `${code} at ${where}`,
  where,
  value: null,
  limits: null,
  ...more,
});
const smoke = (where: string, fire: WhichFire, value: number) =>
  warning('door-gap-smoke', where, { fire, value, limits: { high: 1e-3 * 0.02, unit: 'kg/s' } });

describe('warnings in words', () => {
  it('are one of a kind, in the words of the worst, with the other places and fires behind', () => {
    const told = warningWords(
      [
        smoke('firebox door', 'assumed fire', 1e-4),
        smoke('chamber door', 'assumed fire', 3e-4),
        smoke('firebox door', 'hold fire', 1e-4),
        smoke('chamber door', 'hold fire', 2e-4),
      ],
      sampleDesign,
    );
    expect(told).toMatchObject([{ code: 'door-gap-smoke', where: 'chamber door, under the full fire' }]);
    expect(told[0].message).toMatch(/^door-gap-smoke at chamber door \(also while holding; firebox door\)$/);
  });

  it('stand gravest first, and a lone one as it is', () => {
    const codes = ['biot-above-limit', 'little-air', 'paint-above-limit', 'back-draft', 'something-new'];
    const told = warningWords(
      codes.map((code) => warning(code, 'chamber')),
      sampleDesign,
    );
    expect(told.map(({ rank }) => rank)).toEqual(['stops', 'harm', 'harm', 'mind', 'shop']);
    for (const { code, message } of told) expect(message).toBe(`${code} at chamber`);
  });

  it('name the lower of two limits as the worst where less is worse', () => {
    const air = (fire: WhichFire, value: number) =>
      warning('little-air', '', { fire, value, limits: { low: 1.5, unit: '-' } });
    const told = warningWords([air('assumed fire', 1.4), air('hold fire', 0.9)], sampleDesign);
    expect(told.map(({ where }) => where)).toEqual(['while holding']);
    expect(told[0].message).toMatch(/\(also under the full fire\)$/);
  });

  it.each<[string, WhichFire | undefined, string]>([
    ['', 'assumed fire', 'under the full fire'],
    ['throat', 'hold fire', 'throat, while holding'],
    [sampleDesign.gauge, undefined, 'middle thermometer'],
    ['chamber.thermometers[0].stem', undefined, 'stem of thermometer 1 of the chamber'],
    ['firebox.insulation', undefined, 'insulation of the firebox'],
    ['fire.radiant', undefined, 'heat that leaves as radiation'],
    ['2.5 lb racks', undefined, '2.5 lb racks'],
    ['trailer', undefined, 'trailer'],
    ['firebox fireEnd', 'assumed fire', 'firebox fire end, under the full fire'],
  ])('%s, %s is told as: %s', (where, fire, words) => expect(whereWords({ where, fire }, sampleDesign)).toBe(words));
});

describe('units of a warning', () => {
  const { warnings, design } = estimate(exampleDesign('wind-cold.yaml'));
  const told = (units?: 'shop' | 'si') =>
    warningWords(warnings, design, units)
      .map(({ message }) => message)
      .join(' ');

  it('are those that are asked for', () => {
    expect(told()).toMatch(/\d °F \(\d+ °C\)/);
    expect(told('shop')).toMatch(/\d °F/);
    expect(told('shop')).not.toMatch(/°C|kW|\dkg/);
    expect(told('si')).toMatch(/\d °C/);
    expect(told('si')).not.toMatch(/°F|BTU|lb/);
  });
});
