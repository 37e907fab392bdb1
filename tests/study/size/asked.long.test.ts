import { describe, expect, it } from 'vitest';
import { stringify } from 'yaml';
import { changed, PLAIN } from '../../design/designFiles.js';
import { sizesFor, fedBack } from './asked.js';
import { example, expectExampleSound, FEW } from './askedExamples.js';
import { firstFields } from './firstFields.js';
import { expectSound } from './randomAsked.js';
import { sizeUnder } from './sizeUnder.js';

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

sizeUnder('least: 30 in, most: 31 in', '6 in tube 11 ga, 46 in long');

describe('a drawing', () => {
  it('as it was chosen is good, and says so', { timeout: 600_000 }, async () => {
    const asked = changed(['name: Backyard 24', `name: Backyard 24\nsize: ${JSON.stringify(FEW)}`]);
    const { tree, result } = await sizesFor(asked);
    expect(result.asDrawn.good).toBe(false);
    const again = await sizesFor(fedBack(tree, result).text);
    expect(again.result.asDrawn).toMatchObject({ good: true, missed: [], ok: true });
  });
});

describe('what stays', () => {
  const asked = (size: string, text = PLAIN) => `${text}size: ${size}\n`;

  it('intakes: all of them as drawn, wide open', async () => {
    const text = changed([
      '[{ kind: disc, count: 2, diameter: 4 in, open: 100 %, centre: 26 in }]',
      '[{ kind: disc, count: 2, diameter: 2 in, open: 30 %, centre: 26 in }, { kind: slide, width: 4 in, height: 1 in, centre: 24 in }]',
    ]);
    const size = '{ keep: [intakes], stack: { least: 30 in, most: 31 in }, onHand: [6 in tube 11 ga] }';
    const { fields, sized } = await firstFields(asked(size, text));
    expect(sized.firebox.intakes.map(({ count, open }) => [count, open])).toEqual([
      [2, 1],
      [1, 1],
    ]);
    expect(fields.firebox.intakes).toMatchObject([
      { diameter: '2 in', centre: '26 in' },
      { width: '4 in', height: '1 in', centre: '24 in' },
    ]);
  });

  it('a square tube in place of a round one leaves nothing of it', async () => {
    const { fields, sized } = await firstFields(
      asked('{ stack: { most: 26 in }, onHand: [6 in x 5 in square tube 11 ga] }'),
    );
    expect(fields.stacks[0]).toMatchObject({ shape: 'square', width: '6 in', depth: '5 in', wall: '11 ga' });
    expect(fields.stacks[0]).not.toHaveProperty('diameter');
    expect(sized.stacks[0].diameter).toBeUndefined();
  });
});
