import { readFileSync } from 'node:fs';
import { expect } from 'vitest';
import { parse, stringify } from 'yaml';
import { expectSound } from './randomAsked.js';

export const example = (name: string) =>
  parse(readFileSync(`examples/${name}.yaml`, 'utf8')) as Record<string, unknown>;
/** A narrow band and one tube, so that few sizes have to be tried. */
export const FEW = { stack: { least: '30 in', most: '37 in' }, onHand: ['6 in tube 11 ga', '5 in tube 11 ga'] };

/**
 * Sizes of an example are sound, and clean when they are estimated; where nothing fits, what stands in the way is told.
 */
export async function expectExampleSound(name: string): Promise<void> {
  const result = await expectSound(stringify({ ...example(name), size: FEW }));
  if (result.chosen === null)
    expect(Object.keys(result.wanted.ruledOut).length + result.choices.length).toBeGreaterThan(0);
}
