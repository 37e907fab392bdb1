import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { pitwright } from '../../cli/support/run.js';
import { numbers, saved } from './open.js';

export const flat = (text: string) => text.replace(/\s+/g, ' ');

/** What the command prints for the design that the page saves. */
async function commandSays(page: Page): Promise<string> {
  const { text } = await saved(page);
  return textsOf('-', text);
}

/** What an estimate prints of a design, with the inputs as `check` lists them: plates stand there. */
export async function textsOf(path: string, stdin?: string): Promise<string> {
  const runs = await Promise.all(['estimate', 'check'].map((command) => pitwright([command, path], { stdin })));
  for (const { code, stderr } of runs) expect(code, stderr).toBe(0);
  return runs.map(({ stdout }) => stdout).join('\n');
}

/** Every number and sentence of the page stands in the command's text, in its own words and digits. */
export async function expectCommandsNumbers(page: Page): Promise<void> {
  const [told, text] = [await numbers(page), await commandSays(page)];
  const command = flat(text);
  expect(Object.keys(told).length).toBeGreaterThan(15);
  for (const [row, value] of Object.entries(told)) if (value !== '–') expect(command, row).toContain(value);
  // a time that is never has no wood beside it
  const beside = (time: string, wood: string) => (time === 'never' ? time : `${time} ${wood}`);
  const target = told['hold.thermometer_K.middle'];
  expect(command).toContain(` first reads ${target} ${beside(told.gauge_s, told.woodToGauge_kg)}`);
  expect(command).toContain(`soaked ${beside(told.soaked_s, told.woodToSoaked_kg)}`);
  expect(command).toContain(`draft at the stack base ${told['hold.stackBase_Pa']}`);
  expect(command).toContain(`all steel ${told.steel_kg}`);
  for (const sentence of await page.locator('#sentences p').allTextContents()) {
    expect(command).toContain(flat(sentence));
  }
}
