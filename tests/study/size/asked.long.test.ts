import { describe, expect, it } from 'vitest';
import { stringify } from 'yaml';
import { changed } from '../../design/designFiles.js';
import { sizesFor, fedBack } from './asked.js';
import { example, expectExampleSound, FEW } from './askedExamples.js';
import { expectSound } from './randomAsked.js';

describe('sizes of examples with an upright, and of one that asks itself', () => {
  it.each(['offset-with-upright', 'insulated-upright'])(
    '%s: sound, and clean when they are estimated',
    { timeout: 600_000 },
    expectExampleSound,
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
