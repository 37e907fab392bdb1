import { describe, expect, it } from 'vitest';
import { example, pitwright } from '../cli/support/run.js';
import { expectGrateAndDraft, expectInSight, flat, texts } from './support/answer.js';
import { openPage, settled, type } from './support/open.js';
import { browserAndFolder } from './support/setUp.js';
import { PHONE } from './support/viewports.js';

const { browser, folder } = await browserAndFolder();

const PLAIN = example('plain-24.yaml');
/** A spread study and studies of six steps take their time on a busy machine [ms]. */
const PATIENT = { timeout: 150_000 };

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
    await expectGrateAndDraft(page, estimate);
    // the cook's own curve has its band from then on, which goes with it
    const band = page.locator('#chart path[opacity="0.2"]');
    await expect.poll(() => band.count(), PATIENT).toBe(1);
    await page.locator('#chart-curves button', { hasText: 'middle' }).first().click();
    await expect.poll(() => band.count(), PATIENT).toBe(0);

    const words = page.locator('#try-all-thinner-words');
    await expect
      .poll(async () => compare.includes(flat((await words.textContent())!).replace('All plate ', '')), PATIENT)
      .toBe(true);
    expect(flat((await words.textContent())!)).toMatch(/^All plate 3\/16 in instead of 1\/4 in buys .*less steel/);
    await page.locator('#try-by-part summary').click();
    await expect
      .poll(async () => (await texts(page, '#try-parts p')).map(flat), PATIENT)
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

  it('stays in sight on a phone, with the option that is worked on, in the largest letters of the page', async () => {
    const { page, close } = await openPage(browser!, folder.path, { design: PLAIN, context: { viewport: PHONE } });
    await settled(page);
    await expectInSight(page, true);
    await close();
  });
});
