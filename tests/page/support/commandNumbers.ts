import { readFileSync, writeFileSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { expect } from 'vitest';
import { example, pitwright, type scratch } from '../../cli/support/run.js';
import { numbers, openPage, saved, settled } from './open.js';

const flat = (text: string) => text.replace(/\s+/g, ' ');

/** What the command prints for the design that the page saves. */
async function commandSays(page: Page): Promise<string> {
  const { text } = await saved(page);
  return textsOf('-', text);
}

/** What an estimate prints of a design, with the inputs as `check` lists them: plates stand there. */
async function textsOf(path: string, stdin?: string): Promise<string> {
  const asked = [['estimate', '--full'], ['check']];
  const runs = await Promise.all(asked.map((command) => pitwright([...command, path], { stdin })));
  for (const { code, stderr } of runs) expect(code, stderr).toBe(0);
  return runs.map(({ stdout }) => stdout).join('\n');
}

/**
 * Every number and sentence of the page stands in the command's text, in its own words and digits.
 *
 * @returns that text
 */
export async function expectCommandsNumbers(page: Page): Promise<string> {
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
  // what a cook makes of it comes a moment later
  await page.locator('#sentences[data-cook="known"]').waitFor({ timeout: 150_000 });
  for (const sentence of await page.locator('#sentences p').allTextContents()) {
    expect(command).toContain(flat(sentence));
  }
  return command;
}

/** A design opened from its file shows what the command prints, and is saved so that the command reads it alike. */
export async function expectKeptWhole(
  browser: Browser,
  folder: ReturnType<typeof scratch>,
  name: string,
): Promise<void> {
  const { page, wrongs, close } = await openPage(browser, folder.path, { quiet: true });
  await settled(page);
  await page.locator('#open').setInputFiles(example(name));
  const title = /^name: (.*)$/m.exec(readFileSync(example(name), 'utf8'))![1];
  await expect.poll(() => page.locator('#title').textContent()).toBe(title);
  await settled(page);
  const told = await numbers(page);
  const command = flat(await textsOf(example(name)));
  for (const value of Object.values(told)) expect(command).toContain(value);

  const { text, name: file } = await saved(page);
  expect(file).toMatch(/^[a-z0-9-]+\.yaml$/);
  writeFileSync(folder.at('round.yaml'), text);
  const [own, back] = await Promise.all(
    [example(name), folder.at('round.yaml')].map((path) => pitwright(['estimate', '--json', path])),
  );
  expect(JSON.parse(back.stdout)).toEqual(JSON.parse(own.stdout));
  for (const comment of readFileSync(example(name), 'utf8').match(/# .*$/gm) ?? []) expect(text).toContain(comment);
  expect(wrongs).toEqual([]);
  await close();
}
