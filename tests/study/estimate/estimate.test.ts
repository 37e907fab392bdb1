import { describe, expect, it } from 'vitest';
import { estimate } from '../../../src/study/estimate/estimate.js';
import { everydayExamples, exampleDesign } from '../../support/examples.js';
import { estimatesAreSound } from './soundEstimates.js';

estimatesAreSound(everydayExamples);

describe('the fire that holds', () => {
  const fire = (change: (text: string) => string) =>
    estimate(exampleDesign('plain-24.yaml', change), { steadyOnly: true }).steady!.fire_W;
  const asDrawn = fire((text) => text);

  it('is the larger the harder it blows', () => {
    const fires = [0, 2, 12].map((wind) => fire((text) => text.replace('wind: 5 mph', `wind: ${wind} mph`)));
    const all = [fires[0], fires[1], asDrawn, fires[2]];
    expect(all).toEqual([...all].sort((a, b) => a - b));
  });

  it('is less with fibre on a part, and least with fibre on both', () => {
    const wrap = '  insulation: { material: ceramic fibre, thickness: 2 in, skin: 16 ga }\n';
    const wrapped = (...parts: string[]) =>
      fire((text) => parts.reduce((changed, part) => changed.replace(`\n${part}:\n`, `\n${part}:\n${wrap}`), text));
    const [firebox, chamber, both] = [wrapped('firebox'), wrapped('chamber'), wrapped('firebox', 'chamber')];
    expect(both).toBeLessThan(Math.min(firebox, chamber));
    expect(Math.max(firebox, chamber)).toBeLessThan(asDrawn);
  });
});
