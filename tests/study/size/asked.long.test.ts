import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parse, stringify } from 'yaml';
import { changed } from '../../design/designFiles.js';
import { sizesFor, fedBack } from './asked.js';
import { expectSound } from './randomAsked.js';

const example = (name: string) => parse(readFileSync(`examples/${name}.yaml`, 'utf8')) as Record<string, unknown>;
/** A narrow band and one tube, so that few sizes have to be tried. */
const FEW = { stack: { least: '30 in', most: '37 in' }, onHand: ['6 in tube 11 ga', '5 in tube 11 ga'] };

describe('sizes of the examples', () => {
  it.each(['plain-24', 'boxed-22', 'four-ways', 'offset-with-upright', 'wind-cold', 'insulated-upright'])(
    '%s: sound, and clean when they are estimated',
    { timeout: 600_000 },
    async (name) => {
      const result = await expectSound(stringify({ ...example(name), size: FEW }));
      // where nothing fits, what stands in the way is told
      if (result.chosen === null)
        expect(Object.keys(result.wanted.ruledOut).length + result.choices.length).toBeGreaterThan(0);
    },
  );

  it('tank-on-trailer, as it asks itself: one is chosen', { timeout: 600_000 }, async () => {
    expect((await expectSound(stringify(example('tank-on-trailer')))).chosen).toBe(0);
  });
});

describe('a drawing', () => {
  it('as it was chosen is good, and says so', { timeout: 600_000 }, async () => {
    const asked = changed(['name: Backyard 24', `name: Backyard 24\nsize: ${JSON.stringify(FEW)}`]);
    const { tree, result } = await sizesFor(asked);
    expect(result.asDrawn.good).toBe(false);
    const again = await sizesFor(fedBack(tree, result).text);
    expect(again.result.asDrawn).toMatchObject({ good: true, missed: [], ok: true });
  });
});
