import { readdirSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { listChecks, REGISTRY } from '../../src/verify/registry.js';

const folder = new URL('../../src/physics/', import.meta.url);

/** Public functions that no check calls by their own name, and the check that runs them. */
const THROUGH_OTHERS: Readonly<Record<string, string>> = {
  mixturePolynomial: 'gasEnthalpy',
  molesPerKilogram: 'molarMass',
  emptyOpeningFlow: 'openingFlow',
  addTrickle: 'openingFlow',
  shieldedExchange: 'shieldedExchangePerLength',
  flueGas: 'flueMass',
  rodProfile: 'rodHeat',
};

/** Public functions that give no number. */
const NO_NUMBER = new Set(['outsideValidity']);

describe('the registry', () => {
  test.each(readdirSync(folder).filter((name) => name.endsWith('.ts')))('covers every public function of %s', async (file) => {
    const module = (await import(new URL(file, folder).href)) as Record<string, unknown>;
    const functions = Object.keys(module).filter((name) => typeof module[name] === 'function');
    const uncovered = functions.filter((name) => !NO_NUMBER.has(name) && !REGISTRY.has(THROUGH_OTHERS[name] ?? name));
    expect(uncovered).toEqual([]);
  });

  test('lists every check with each of its inputs', () => {
    const text = listChecks();
    for (const [name, check] of REGISTRY) {
      expect(text).toContain(`  ${name} -> `);
      for (const input of Object.keys(check.inputs)) expect(text).toMatch(new RegExp(`^ {6}${input}\\?? \\[`, 'm'));
    }
  });
});
