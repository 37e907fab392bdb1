import { expect } from 'vitest';

/** A text of an estimate says how sure each number is, by so many cases. */
export function expectHowSure(text: string, cases: number): void {
  expect(text).toMatch(/after\s+\d+ min[\d\ss]*\(8 of\s+10\s+cases:\s+\d+[\d\smins]*\sto\s+\d+[\d\smins]*\)/);
  expect(text).toMatch(new RegExp(`^HOW SURE: ${cases} cases`, 'm'));
  for (const line of text.split('\n')) expect(line.length).toBeLessThanOrEqual(100);
}
