import { describe, expect, test } from 'vitest';
import { listChecks, REGISTRY } from '../../src/verify/registry.js';

describe('the registry', () => {
  test('lists every check with each of its inputs', () => {
    const text = listChecks();
    for (const [name, check] of REGISTRY) {
      expect(text).toContain(`  ${name} -> `);
      for (const input of Object.keys(check.inputs)) expect(text).toMatch(new RegExp(`^ {6}${input}\\?? \\[`, 'm'));
    }
  });
});
