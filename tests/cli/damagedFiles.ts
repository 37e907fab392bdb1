import { readFileSync } from 'node:fs';
import { expect } from 'vitest';
import { example, pitwright } from './support/run.js';

const text = readFileSync(example('offset-with-upright.yaml'), 'utf8');

/** A small generator with a fixed seed (Marsaglia's xorshift32), so that a failing file can be made again. */
function generator(seed: number): (below: number) => number {
  let state = seed;
  return (below) => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) % below;
  };
}

const VALUES = [
  '-1',
  '1e999',
  'NaN',
  '~',
  '[]',
  '{}',
  '"',
  '!!js/function x',
  '&a *a',
  '1/0 in',
  '99999999 in',
  '٣ in',
  '\u0000',
];

function damage(seed: number): Buffer {
  const random = generator(seed * 7919 + 1);
  const lines = text.split('\n');
  for (let i = 0; i <= random(3); i++) {
    const at = random(lines.length);
    const kinds = [
      () => lines.splice(at, 1),
      () => lines.splice(at, 0, lines[random(lines.length)]),
      () => (lines[at] = lines[at].replace(/:.*/, `: ${VALUES[random(VALUES.length)]}`)),
      () => (lines[at] = lines[at].slice(0, random(lines[at].length + 1))),
      () => (lines[at] = ` ${lines[at]}`),
      () => (lines[at] = `${'{'.repeat(200)}${lines[at]}`),
    ];
    kinds[random(kinds.length)]();
  }
  const bytes = Buffer.from(lines.join('\n'));
  if (random(4) === 0) bytes[random(bytes.length)] = random(256);
  return bytes;
}

/** Each damaged file gives a result, or a clear message and a number that says whose fault; never a stack. */
export async function estimateDamaged(from: number, to: number): Promise<void> {
  const codes: Record<string, number> = {};
  for (let seed = from; seed <= to; seed++) {
    const { code, stdout, stderr } = await pitwright(['estimate', '-', '--json'], { stdin: damage(seed) });
    const where = `seed ${seed}: exit ${code}, ${stderr.slice(0, 300)}`;
    expect([0, 3, 4], where).toContain(code);
    expect(stderr, where).not.toMatch(/^\s+at |node:internal|our fault/m);
    if (code === 3) {
      expect(stdout, where).toBe('');
      expect(stderr, where).toMatch(/^pitwright: standard input: /);
    } else {
      expect(() => JSON.parse(stdout), where).not.toThrow();
    }
    codes[String(code)] = (codes[String(code)] ?? 0) + 1;
  }
  expect(codes['3']).toBeGreaterThan((to - from) / 4);
}
