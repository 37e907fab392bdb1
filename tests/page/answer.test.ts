import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { example, pitwright } from '../cli/support/run.js';
import { openPage, settled, type } from './support/open.js';
import { browserAndFolder } from './support/setUp.js';
import { DESK, PHONE } from './support/viewports.js';

const { browser, folder } = await browserAndFolder();

const PLAIN = example('plain-24.yaml');
/** A spread study and studies of six steps take their time on a busy machine [ms]. */
const PATIENT = { timeout: 150_000 };

const texts = (page: Page, selector: string) => page.locator(selector).allTextContents();
const flat = (text: string) => text.replace(/\s+/g, ' ');

describe.skipIf(!browser)('the answer', () => {
  it('is what the command says, with the range of its spread, and what a step of plate changes in the words of a comparison', async () => {
    const { page, wrongs, close } = await openPage(browser!, folder.path, { design: PLAIN });
    await settled(page);
    const [estimate, compare] = (
      await Promise.all([
        pitwright(['estimate', PLAIN, '--full', '--spread', '40']),
        pitwright(['compare', PLAIN, '--vary', 'all.plate=1/4 in | 3/16 in']),
      ])
    ).map(({ code, stdout, stderr }) => {
      expect(code, stderr).toBe(0);
      return flat(stdout);
    });
    await expect.poll(() => texts(page, '#answer-soaked .under'), PATIENT).not.toContain('8 in 10: …');
    const [soaked, wood] = await Promise.all(['soaked', 'wood'].map((cell) => texts(page, `#answer-${cell} dd`)));
    expect(estimate).toContain(`soaked after ${soaked[0]} (8 of 10 cases: ${soaked[1].replace('8 in 10: ', '')})`);
    expect(estimate).toContain(`takes ${wood[0]} of wood (8 of 10 cases: ${wood[1].replace('8 in 10: ', '')})`);
    const [grate, lid, even] = await texts(page, '#answer-grate dd');
    expect(lid).toBe('lid 250 °F');
    expect(estimate).toContain(`${grate} in the middle`);
    expect(estimate).toContain(`${even.replace(' end to end', '')} apart`);
    expect(await texts(page, '#answer-draws dd')).toEqual(['yes', expect.stringMatching(/^0\.\d+ in H2O, /), '']);
    expect(estimate).toContain((await texts(page, '#answer-draws .under'))[0].split(',')[0]);

    const words = page.locator('#try-all-thinner-words');
    await expect
      .poll(async () => compare.includes(flat((await words.textContent())!).replace('All plate ', '')), PATIENT)
      .toBe(true);
    expect(await words.textContent()).toMatch(/^All plate 3\/16 in instead of 1\/4 in buys .*less steel/);
    await page.locator('#try-by-part summary').click();
    await expect
      .poll(() => texts(page, '#try-parts p'), PATIENT)
      .toEqual([
        expect.stringMatching(/^Firebox plate 3\/16 in instead of 1\/4 in /),
        expect.stringMatching(/^Firebox plate 5\/16 in instead of 1\/4 in /),
        expect.stringMatching(/^Chamber plate 3\/16 in instead of 1\/4 in /),
        expect.stringMatching(/^Chamber plate 5\/16 in instead of 1\/4 in /),
      ]);
    expect(wrongs).toEqual([]);
    await close();
  });

  it('steps are one tap: each is an option of its own, named by what it changes', async () => {
    const { page, wrongs, close } = await openPage(browser!, folder.path, { design: PLAIN });
    await settled(page);
    const working = page.locator('#working');
    for (const [step, name] of [
      ['all-thinner', 'All plate 3/16 in'],
      ['firebox-wrap', 'Firebox insulation 1 in'],
      ['chamber-square', 'Square chamber'],
      ['stack', 'Stack height 42 in'],
    ]) {
      await working.selectOption({ index: 0 });
      await page.locator(`[data-try="${step}"]`).click();
      expect(await working.locator('option:checked').textContent()).toBe(name);
    }
    // there is room for no more
    expect(await page.locator('[data-try="all-thinner"]').isDisabled()).toBe(true);
    // a change of the design that is made before a step is in it
    await page.locator('#undo').click();
    await working.selectOption({ index: 0 });
    await type(page, 'chamber.length', '66 in');
    await page.locator('[data-try="firebox-square"]').click();
    expect(await page.locator('[data-field="chamber.length"]').inputValue()).toBe('66 in');
    // held against another one, differences are told from that
    await page.getByRole('button', { name: 'Compare to this: All plate 3/16 in' }).click();
    await settled(page);
    expect((await working.locator('option').allTextContents())[0]).toMatch(/^All plate 3\/16 in/);
    const steel = page.locator('tr[data-row="steel_kg"] td .difference');
    await expect
      .poll(() => steel.allTextContents(), PATIENT)
      .toEqual(['', expect.stringMatching(/^\+\d+ lb$/), ...Array(3).fill(expect.stringMatching(/^\+\d+ lb$/))]);
    expect(wrongs).toEqual([]);
    await close();
  });

  it('is printed as it stands on the screen, also right after an edit', async () => {
    const { page, wrongs, close } = await openPage(browser!, folder.path, {
      design: PLAIN,
      before: () =>
        Object.assign(window, {
          printed: [],
          print: () =>
            (window as unknown as { printed: string[] }).printed.push(
              document.getElementById('buyer')!.textContent ?? '',
            ),
        }),
    });
    await settled(page);
    await page.locator('#buyer figure').first().waitFor({ state: 'attached', timeout: 60_000 });
    expect(await page.locator('#buyer').textContent()).not.toContain('5/8 in');
    await page.locator('[data-field="chamber.plate"]').evaluate((each) => {
      const field = each as HTMLInputElement;
      field.value = '5/8 in';
      field.dispatchEvent(new Event('input', { bubbles: true }));
      document.getElementById('print')!.click();
    });
    // what the browser's own menu would print has nothing of the design before
    expect(await page.locator('#buyer').textContent()).toBe('');
    const printed = () => page.evaluate(() => (window as unknown as { printed: string[] }).printed);
    await expect.poll(printed, PATIENT).toHaveLength(1);
    const [steel] = await texts(page, 'tr[data-row="steel_kg"] .value');
    expect((await printed())[0]).toContain('5/8 in');
    expect((await printed())[0]).toContain(steel.split(' (')[0]);
    expect(wrongs).toEqual([]);
    await close();
  });

  it.each([
    ['desk', DESK],
    ['phone', PHONE],
  ] as const)(
    'stays in sight on a %s, with the option that is worked on, in the largest letters of the page',
    async (_, viewport) => {
      const { page, close } = await openPage(browser!, folder.path, { design: PLAIN, context: { viewport } });
      await settled(page);
      await page.locator('#add').click();
      for (const to of [0, 600, 1e6]) {
        await page.evaluate((y) => window.scrollTo(0, y), to);
        for (const id of ['#working', '#answer-soaked', '#answer-wood', '#answer-grate', '#answer-draws']) {
          const box = (await page.locator(id).boundingBox())!;
          expect(box.y, id).toBeGreaterThanOrEqual(0);
          expect(box.y + box.height, id).toBeLessThan(0.55 * viewport.height);
        }
      }
      const { largest, others } = await page.evaluate(() => {
        const size = (each: Element) => parseFloat(getComputedStyle(each).fontSize);
        const all = [...document.body.querySelectorAll('*')].filter(
          (each) => each.textContent !== '' && !each.closest('svg, #buyer'),
        );
        return {
          largest: Math.min(...[...document.querySelectorAll('#readout .big')].map(size)),
          others: Math.max(...all.filter((each) => !each.matches('.big')).map(size)),
        };
      });
      expect(largest).toBeGreaterThan(1.15 * others);
      await close();
    },
  );
});

it.skipIf(!browser)('a chart is saved as lines and as a picture', async () => {
  const { page, wrongs, close } = await openPage(browser!, folder.path, { design: PLAIN, file: 'charts.html' });
  await settled(page);
  await page.locator('#chart svg').waitFor();
  const saved = async (kind: string) => {
    const [download] = await Promise.all([page.waitForEvent('download'), page.locator(`#chart-${kind}`).click()]);
    expect(download.suggestedFilename()).toBe(`backyard-24-thermometers.${kind}`);
    return readFileSync(await download.path());
  };
  const svg = (await saved('svg')).toString();
  expect(svg).toMatch(/^<svg [^>]*xmlns="http:\/\/www\.w3\.org\/2000\/svg"/);
  // colours of its own, not the page's
  expect(svg).not.toContain('var(--');
  const png = await saved('png');
  expect(png.subarray(1, 4).toString()).toBe('PNG');
  expect(png.readUInt32BE(16)).toBe(Math.round(2 * Number(/ width="([\d.]+)"/.exec(svg)![1])));
  expect(wrongs).toEqual([]);
  await close();
});
