import { readFileSync, writeFileSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import { describe, expect, it } from 'vitest';
import { example } from '../cli/support/run.js';
import { addHeavier, expectBroughtBack, expectKeptOverReload, expectReadBack } from './support/kept.js';
import { openPage, settled, slide, type } from './support/open.js';
import { browserAndFolder } from './support/setUp.js';

describe('a file of all options', () => {
  it.each([
    'offset-with-upright',
    'boxed-22',
    'reverse-flow',
    'insulated-upright',
    'wind-cold',
    'four-ways',
    'tank-on-trailer',
  ])('reads back to the same designs, whatever is tried of %s', expectReadBack);
});

const { browser, folder } = await browserAndFolder();

describe.skipIf(!browser)('nothing is lost', () => {
  const open = () => openPage(browser!, folder.path, { design: example('plain-24.yaml') });

  it('a reload keeps five options and which one is worked on; starting over can be taken back', async () => {
    const { page, wrongs, close } = await open();
    await expectKeptOverReload(page, ['3/8 in', '3/16 in', '5/16 in', '1/2 in']);
    expect(wrongs).toEqual([]);
    await close();
  });

  it('Ctrl-Z takes back twenty changes, also in the field where one was typed, and Ctrl-Shift-Z makes them again', async () => {
    const { page, wrongs, close } = await open();
    await settled(page);
    const field = page.locator('[data-field="chamber.length"]');
    for (let i = 0; i < 10; i++) {
      await type(page, 'chamber.length', `${61 + i} in`);
      await slide(page, 'site.wind', 30 + i);
    }
    await field.focus();
    for (let i = 0; i < 20; i++) await page.keyboard.press('Control+z');
    expect(await field.inputValue()).toBe('60 in');
    expect(await page.locator('#undo').isDisabled()).toBe(true);
    for (let i = 0; i < 20; i++) await page.keyboard.press('Control+Shift+z');
    expect(await field.inputValue()).toBe('70 in');
    expect(await page.locator('#redo').isDisabled()).toBe(true);
    await settled(page);
    expect(wrongs).toEqual([]);
    await close();
  });

  it('a link and a saved page bring the design back, and no request leaves', async () => {
    const { page, wrongs, close } = await open();
    const told = await addHeavier(page);
    await page.locator('#more summary').click();
    await page.locator('#link').click();
    const link = await page.locator('#link-text').inputValue();
    expect(link).toMatch(/\.html#design=[\w-]+$/);
    await page.locator('#more summary').click();
    const [download] = await Promise.all([page.waitForEvent('download'), page.locator('#save-page').click()]);
    expect(download.suggestedFilename()).toBe('backyard-24.html');
    const own = folder.at('own.html');
    writeFileSync(own, readFileSync(await download.path()));
    expect(wrongs).toEqual([]);
    await close();
    for (const address of [link, pathToFileURL(own).href]) await expectBroughtBack(browser!, address, told);
  });

  it('says so where the browser keeps nothing, and asks before the page is left', async () => {
    const { page, close } = await openPage(browser!, folder.path, {
      design: example('plain-24.yaml'),
      quiet: true,
      before: () => {
        const refuse = () => {
          throw new DOMException('no', 'SecurityError');
        };
        Object.defineProperty(window, 'localStorage', { get: refuse });
        Object.defineProperty(window, 'sessionStorage', { get: refuse });
      },
    });
    await settled(page);
    await expect.poll(() => page.locator('#not-kept').isVisible()).toBe(true);
    await page.locator('#add').click();
    await type(page, 'chamber.plate', '3/8 in');
    await settled(page);
    await page.waitForTimeout(500);
    page.removeAllListeners('dialog');
    const asked = page.waitForEvent('dialog');
    const leaving = page.close({ runBeforeUnload: true });
    const dialog = await asked;
    expect(dialog.type()).toBe('beforeunload');
    await dialog.accept();
    await leaving;
    await close();
  });
});
