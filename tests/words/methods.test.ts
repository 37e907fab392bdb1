import { describe, expect, test } from 'vitest';
import { methodsOf } from '../../src/words/methods.js';
import { sourcesOf } from '../../src/report/sheets/sources.js';
import { exampleDesign } from '../support/examples.js';

describe('what a sheet says about methods', () => {
  test('goes by the design: no wind, no wind relation; no stainless, no annex; a wet load evaporates', () => {
    const plain = exampleDesign('plain-24.yaml');
    const names = (design: typeof plain) => methodsOf(design).map((method) => method.run.name);
    const still = { ...plain, site: { ...plain.site, wind: 0 } };
    expect(names(plain)).toContain('nusseltFlatPlate');
    expect(names(still)).not.toContain('nusseltFlatPlate');
    expect(names(plain)).not.toContain('stainlessSpecificHeat');
    expect(names({ ...plain, chamber: { ...plain.chamber!, steel: 'stainless' } })).toContain('stainlessSpecificHeat');
    expect(names({ ...plain, site: { ...plain.site, rain: 0.5 } })).toContain('evaporation');
    expect(names(exampleDesign('reverse-flow.yaml'))).toContain('levelExchange');
    expect(names(plain)).not.toContain('levelExchange');
  });

  test('names no method that is not run', () => {
    const text = sourcesOf(exampleDesign('offset-with-upright.yaml')).join('\n');
    expect(text).not.toMatch(/radiosit|Colebrook/i);
    expect(text).toContain('friction factor, Haaland (1983)');
  });
});
