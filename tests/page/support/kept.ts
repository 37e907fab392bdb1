import type { Browser, Page } from 'playwright-core';
import { expect } from 'vitest';
import { readDesign } from '../../../src/design/read.js';
import { designFile } from '../../../src/page/designFile.js';
import { allPlateSteps, otherSteps, partPlateSteps } from '../../../src/page/trySteps.js';
import { Workbench } from '../../../src/page/workbench.js';
import { type Option } from '../../../src/page/option.js';
import { textOf } from './bench.js';
import { ASIDES, beQuiet, settled, type } from './open.js';

/** One design is another but for its names. */
export const expectSame = (a: Option['design'], b: Option['design'] | undefined) =>
  expect({ ...b, name: '', shop: '', job: '' }).toEqual({ ...a, name: '', shop: '', job: '' });

/** Whatever step is tried of an example, the file of all options reads back to the same designs. */
export function expectReadBack(name: string): void {
  const { current } = new Workbench(textOf(name));
  const steps = [...allPlateSteps(current), ...partPlateSteps(current), ...otherSteps(current)];
  expect(steps.length).toBeGreaterThan(5);
  for (const { label, text } of steps) {
    const bench = new Workbench(textOf(name));
    for (const option of bench.options.slice(1)) bench.remove(option);
    const option = bench.addText(text)!;
    const file = designFile(bench.options);
    expect([file.same, file.apart], label).toEqual([[], []]);
    const read = readDesign(file.text, { fileName: 'saved.yaml' });
    if (read.faults) throw new Error(JSON.stringify(read.faults));
    expect(read.options).toHaveLength(1);
    expectSame(option.design, read.options[0].design);
    expectSame(bench.baseline.design, read.design);
  }
}

/** The options that can be worked on, by name. */
export const working = (page: Page) => page.locator('#working option').allTextContents();

/** Adds an option of heavier plate; the names of all there are then. */
export async function addHeavier(page: Page): Promise<string[]> {
  await settled(page);
  await page.locator('#add').click();
  await type(page, 'chamber.plate', '5/16 in');
  await settled(page);
  return working(page);
}

/**
 * A page gets an option of each plate and is worked on in the first: all is there again in a new load, and in another
 * window.
 */
export async function expectKeptOverReload(page: Page, plates: string[]): Promise<void> {
  await settled(page);
  for (const plate of plates) {
    await page.locator('#add').click();
    await type(page, 'chamber.plate', plate);
  }
  await page.locator('#working').selectOption({ index: 1 });
  const before = await working(page);
  expect(before).toEqual(['As drawn', ...plates.map((each) => `Chamber plate ${each}`)]);
  await page.reload();
  await settled(page);
  expect(await working(page)).toEqual(before);
  expect(await page.locator('[data-field="chamber.plate"]').inputValue()).toBe(plates[0]);
  await page.locator('#notice').getByRole('button', { name: 'Start over' }).click();
  expect(await working(page)).toEqual(['As drawn']);
  await page.keyboard.press('Control+z');
  expect(await working(page)).toEqual(before);
  // another window of the same browser finds them as well
  const other = await page.context().newPage();
  await other.goto(page.url());
  await settled(other);
  expect(await working(other)).toEqual(before);
  await other.close();
}

/**
 * An address opened in a new window has these options, asks for nothing more, and keeps what is changed from there on.
 */
export async function expectBroughtBack(browser: Browser, address: string, told: string[]): Promise<void> {
  const context = await browser.newContext();
  await context.addInitScript(beQuiet, ASIDES);
  const fresh = await context.newPage();
  const requests: string[] = [];
  fresh.on('request', (request) => requests.push(request.url()));
  fresh.on('pageerror', (error) => requests.push(error.message));
  await fresh.goto(address);
  await settled(fresh);
  expect(await working(fresh)).toEqual(told);
  expect(await fresh.locator('[data-field="chamber.plate"]').inputValue()).toBe('5/16 in');
  expect(fresh.url()).not.toContain('#');
  expect(requests.filter((url) => url !== address.replace(/#.*/, '') && !/^(blob|data):/.test(url))).toEqual([]);
  // changes made from here on are not undone by a reload
  await type(fresh, 'chamber.length', '66 in');
  await fresh.reload();
  await settled(fresh);
  expect(await fresh.locator('[data-field="chamber.length"]').inputValue()).toBe('66 in');
  await context.close();
}
