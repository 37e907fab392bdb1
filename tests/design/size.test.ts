import { describe, expect, it } from 'vitest';
import { OVER_HEAD, OVER_LID, stackLengths } from '../../src/design/stackBounds.js';
import { readTube } from '../../src/design/tubeText.js';
import { designOf, faultsOf, PLAIN } from './designFiles.js';

const inch = 0.0254;
const sized = (size: string, text = PLAIN) => `${text}size: ${size}\n`;

describe('what is asked of sizes', () => {
  it('is nothing where the file asks nothing', () => {
    expect(designOf(PLAIN).size).toBeUndefined();
    expect(designOf(sized('{ keep: [throat] }')).size).toEqual({ keep: ['throat'] });
  });

  it('reads what stays, how high a stack may be, and what is on hand', () => {
    const { size } = designOf(
      sized(
        '{ keep: [throat, intakes], stack: { least: 24 in, most: 4 ft, over: head, shapes: [square, round] }, onHand: [6 in pipe, 6 in x 4 in square tube 3/16 in 50 in long] }',
      ),
    );
    expect(size).toMatchObject({
      keep: ['intakes', 'throat'],
      stack: { over: 'head', shapes: ['round', 'square'] },
      onHand: [{ written: { diameter: '6 in pipe, standard wall' } }, { size: { shape: 'square' } }],
    });
    expect(size!.stack!.least! / inch).toBeCloseTo(24, 9);
    expect(size!.stack!.most! / inch).toBeCloseTo(48, 9);
    expect(size!.onHand![1].long! / inch).toBeCloseTo(50, 9);
  });

  it('a gauge on hand is that of the stack’s steel', () => {
    const of = (text: string) =>
      designOf(sized('{ onHand: [6 in tube 11 ga] }', text)).size!.onHand![0].size.wall / inch;
    expect(of(PLAIN)).toBeCloseTo(0.1196, 6);
    expect(of(PLAIN.replace('base: 42 in', 'base: 42 in, steel: stainless'))).toBeCloseTo(0.125, 6);
  });

  it.each([
    ['a name that stays nowhere', '{ keep: [trhoat] }', 'size.keep[0]', { code: 'unknown-name', nearest: 'throat' }],
    ['no list', '{ keep: throat }', 'size.keep', { code: 'wrong-type', example: 'keep: [intakes, throat]' }],
    ['all kept', '{ keep: [intakes, throat, stack] }', 'size.keep', { code: 'cannot-be-built' }],
    ['a stack kept and chosen', '{ keep: [stack], onHand: [6 in pipe] }', 'size.onHand', { code: 'cannot-be-built' }],
    [
      'least over most',
      '{ stack: { least: 40 in, most: 30 in } }',
      'size.stack.least',
      { code: 'cannot-be-built', value: '40 in' },
    ],
    [
      'a top below the foot',
      '{ stack: { most: 30 in, over: ground } }',
      'size.stack.most',
      { code: 'cannot-be-built' },
    ],
    ['a bare number', '{ stack: { least: 36 } }', 'size.stack.least', { code: 'no-unit', nearest: '36 in' }],
    [
      'another word',
      '{ stack: { over: roof } }',
      'size.stack.over',
      { code: 'unknown-name', allowed: 'lid, head, ground' },
    ],
    ['an unknown field', '{ keeps: [throat] }', 'size.keeps', { code: 'unknown-key', nearest: 'keep' }],
    ['a field by another name', '{ stock: [6 in pipe] }', 'size.stock', { code: 'unknown-key', nearest: 'onHand' }],
    [
      'a comma that parts a tube',
      '{ onHand: [6 in tube, 11 ga] }',
      'size.onHand[0]',
      { code: 'missing', nearest: '6 in tube 11 ga' },
    ],
    [
      'no tube',
      '{ onHand: [6 in tub 11 ga] }',
      'size.onHand[0]',
      { nearest: '6 in tube 11 ga', example: '6 in tube 11 ga' },
    ],
    [
      'a shape that is not on hand',
      '{ stack: { shapes: [square] }, onHand: [6 in pipe] }',
      'size.stack.shapes',
      { code: 'cannot-be-built', allowed: 'round' },
    ],
    ['nothing on hand', '{ onHand: [] }', 'size.onHand', { code: 'out-of-range' }],
    ['a stack alone', '6 in', 'size', { code: 'wrong-type', example: expect.stringContaining('keep:') }],
  ])('%s: one fault at its field', (_, size, path, fault) => {
    expect(faultsOf(sized(size))[0]).toMatchObject({ path, line: PLAIN.split('\n').length, ...fault });
  });
});

describe('a tube on a list', () => {
  it.each([
    ['6 in tube 11 ga', { diameter: 6, wall: 0.1196 }],
    ['6 in tube, 11 ga', { diameter: 6, wall: 0.1196 }],
    ['6-5/8 in tube 1/4 in, 40 in long', { diameter: 6.625, wall: 0.25, long: 40 }],
    ['6 in pipe', { diameter: 6.625, wall: 0.28 }],
    ['6 in pipe 3 ft long', { diameter: 6.625, wall: 0.28, long: 36 }],
    ['6 in pipe, schedule 40, 4 ft 2 in long', { diameter: 6.625, wall: 0.28, long: 50 }],
    ['5 in square tube 3/16 in', { width: 5, depth: 5, wall: 0.1875 }],
    ['6 in x 4 in square tube 3/16 in 50 in long', { width: 6, depth: 4, wall: 0.1875, long: 50 }],
    ['6 in by 4 in tube 3/16 in', { width: 6, depth: 4, wall: 0.1875 }],
  ])('%s', (text, inches) => {
    const read = readTube(text);
    if (!read.ok) throw new Error(read.message);
    const { size, long } = read.tube;
    for (const [key, value] of Object.entries(inches)) {
      expect({ ...size, long }[key as 'long']! / inch).toBeCloseTo(value, 6);
    }
  });

  it.each([
    '',
    'dog',
    '6 in',
    '11 ga',
    '6 in tube',
    '7 in pipe',
    '6 in square pipe',
    '6 tube 11 ga',
    '6 in tube 99 ga',
    '1 in tube 1/2 in',
    '40 in tube 1/4 in',
    '6 in tube 11 ga, 0 in long',
  ])('%j is none', (text) => {
    expect(readTube(text)).toMatchObject({ ok: false });
  });

  it('its fields make it in a design file', () => {
    for (const text of ['6 in tube 11 ga', '6 in pipe', '6 in x 4 in square tube 3/16 in']) {
      const read = readTube(text);
      if (!read.ok) throw new Error(text);
      const fields = JSON.stringify(read.tube.written).slice(1, -1);
      const { stacks } = designOf(
        PLAIN.replace('diameter: 6 in, height: 36 in, wall: 11 ga', `${fields}, height: 36 in`),
      );
      expect(stacks[0]).toMatchObject(read.tube.size);
    }
  });
});

describe('between its bounds', () => {
  // the chamber's lid is at 52 in, the stack's foot at 42 in
  const lengths = (stack: string) => {
    const { least, most } = stackLengths(designOf(sized(`{ stack: ${stack} }`)));
    return [least / inch, most / inch].map((each) => Number(each.toFixed(6)));
  };

  it('a stack ends over a head and well over the lid where nothing is asked', () => {
    const { least, most } = stackLengths(designOf(PLAIN));
    expect(least).toBeCloseTo(Math.max(OVER_HEAD, 52 * inch + OVER_LID) - 42 * inch, 9);
    expect(most).toBe(Infinity);
  });

  it.each([
    ['{ least: 30 in, most: 40 in }', [40, 50]],
    ['{ least: 30 in, most: 40 in, over: lid }', [40, 50]],
    ['{ least: 6 in, most: 12 in, over: head }', [36, 42]],
    ['{ least: 70 in, most: 96 in, over: ground }', [28, 54]],
    // the usual gives way
    ['{ most: 10 in }', [20, 20]],
  ])('%s', (stack, expected) => {
    expect(lengths(stack)).toEqual(expected);
  });
});
