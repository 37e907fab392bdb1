import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { PLAIN } from './designFiles.js';
import { fuzz, mustStand, mustStandBoth } from './fuzzing.js';

fuzz(0.01);

describe('any text', () => {
  // each beyond the limits of a file, and just within them
  it.each([
    ['open brackets', '['.repeat(400_000), '['.repeat(60)],
    ['open braces', '{a: '.repeat(200_000), '{a: '.repeat(60)],
    [
      'closed brackets',
      `${'['.repeat(50)}${']'.repeat(50)}\n`.repeat(5000),
      `- ${'['.repeat(50)}${']'.repeat(50)}\n`.repeat(99),
    ],
    ['quoted brackets', `a: "${'['.repeat(900_000)}"`, `a: "${'['.repeat(9_900)}"`],
    ['dashes', '- '.repeat(400_000), '- '.repeat(59)],
    ['question marks', '? '.repeat(400_000), '? '.repeat(59)],
    ['colons', ': '.repeat(400_000), ': '.repeat(59)],
    ['one long key', `${'k'.repeat(900_000)}: 1`, `${'k'.repeat(240_000)}: 1`],
    [
      'flow keys',
      `a: {${'k, '.repeat(90_000)}}`,
      `a: {${Array.from({ length: 9_900 }, (_, i) => `k${i}`).join(', ')}}`,
    ],
    ['list items', `stacks: [${'1,'.repeat(400_000)}]`, `stacks: [${'1,'.repeat(9_900)}]`],
    ['blocks', '- {}\n'.repeat(90_000), `stacks: [${'{},'.repeat(3_300)}]`],
    [
      'aliases',
      'a: *a\n'.repeat(19_000),
      `a: &a 1\n${Array.from({ length: 3_300 }, (_, i) => `k${i}: *a`).join('\n')}`,
    ],
    ['syntax faults', 'a: b: c\n'.repeat(19_000), 'a: b: c\n'.repeat(4_900)],
    ['quotes', '"'.repeat(500_001), '"'.repeat(9_999)],
    ['spaces', `${' '.repeat(900_000)}a`, `${' '.repeat(240_000)}a`],
    ['percent signs', '%'.repeat(900_000), '%'.repeat(240_000)],
    ['carriage returns', `${'\r'.repeat(900_000)}a: 1`, `${'\r'.repeat(240_000)}a: 1`],
    [
      'steps',
      Array.from({ length: 9000 }, (_, i) => `${' '.repeat(i % 59)}a:`).join('\n'),
      Array.from({ length: 1000 }, (_, i) => `${' '.repeat(i % 59)}a:`).join('\n'),
    ],
    ['digits', `schema: ${'9'.repeat(900_000)}`, `schema: ${'9'.repeat(240_000)}`],
    ['thousands', `fire: { heat: '${'1,111'.repeat(100_000)} W' }`, `fire: { heat: '${'1,111'.repeat(9_000)} W' }`],
    [
      'fractions',
      `fire: { heat: '${'1'.repeat(300_000)}/1 W' }`,
      `fire: { heat: '${'1'.repeat(100_000)}/${'1'.repeat(100_000)} W' }`,
    ],
  ])('of many %s', mustStandBoth);
});

describe('any tree', () => {
  it('of fields in a prototype’s name', () => {
    for (const key of ['__proto__', 'constructor', 'prototype', 'hasOwnProperty', 'toString']) {
      expect(mustStand(`${PLAIN}${key}: { a: 1 }\n`)).toBe('faults');
      expect(mustStand(JSON.stringify(parse(PLAIN)).replace('{', `{"${key}":{"chamber":1},`))).toBe('faults');
      expect(mustStand(PLAIN.replace('kind: oak', `kind: ${key}`))).toBe('faults');
      expect(mustStand(PLAIN.replace('doorGap: 1.0 in^2', `finish: ${key}`))).toBe('faults');
      expect(mustStand(PLAIN.replace('doorGap: 1.0 in^2', `insulation: { material: ${key}, thickness: 1 in }`))).toBe(
        'faults',
      );
    }
    expect(({} as Record<string, unknown>).chamber).toBeUndefined();
  });
});
