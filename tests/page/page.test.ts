import { readFileSync, statSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { example } from '../cli/support/run.js';
import { expectGrateAndDraft } from './support/answer.js';
import { expectCommandsNumbers } from './support/commandNumbers.js';
import { numbers, settled, slide, type } from './support/open.js';
import { browserAndFolder, onePage } from './support/setUp.js';

const { browser, folder } = await browserAndFolder();

describe.skipIf(!browser)('the page, opened from a file', () => {
  const open = onePage(browser!, folder.path, { design: example('plain-24.yaml'), quiet: ['step', 'spread'] });

  it('is one small file with a policy that lets nothing in or out', () => {
    const file = folder.at('page.html');
    const html = readFileSync(file, 'utf8');
    expect(statSync(file).size).toBeLessThan(700_000);
    expect(html).toMatch(/Content-Security-Policy" content="default-src 'none';/);
    expect(html).not.toMatch(/connect-src|unsafe-|(?:src|href)="https?:/);
  });

  it('shows its design solved, before anything is touched', async () => {
    const { page } = open;
    expect(await page.locator('#title').textContent()).toBe('Backyard 24');
    expect(Object.keys(await numbers(page))).toContain('soaked_s');
  });

  it('follows sliders to what the command prints, also of grate and draft', async () => {
    const { page } = open;
    const before = await numbers(page);
    await slide(page, 'chamber.length', 60);
    await slide(page, 'firebox.intakes[0].open', 60);
    await slide(page, 'chamber.plate', 8);
    await slide(page, 'firebox.insulation.thickness', 4);
    await slide(page, 'site.wind', 24);
    await settled(page);
    const after = await numbers(page);
    expect(await page.locator('[data-field="chamber.plate"]').inputValue()).toBe('3/8 in');
    expect(await page.locator('[data-field="firebox.insulation.thickness"]').inputValue()).toBe('2 in');
    for (const row of ['gauge_s', 'soaked_s', 'hold.wood_kg_per_s', 'hold.heatLoss_W.firebox', 'steel_kg'])
      expect(after[row]).not.toBe(before[row]);
    await expectGrateAndDraft(page, await expectCommandsNumbers(page));
  });

  it("shows the reader's own words for bad typing, keeps the last good result, and mends", async () => {
    const { page } = open;
    const before = await numbers(page);
    const field = page.locator('[data-field="chamber.plate"]');
    const fault = page.locator(`#${await field.getAttribute('id')}-fault`);
    for (const [typed, words] of [
      ['a quarter', "'a quarter' does not begin with a number"],
      ['1/4 inn', 'allowed: a plate thickness in in, ga, ft, mm, cm, m'],
      ['9 ft', 'is thicker than half the part'],
      ['', 'is empty'],
    ]) {
      await type(page, 'chamber.plate', typed);
      await expect.poll(() => fault.textContent()).toContain(words);
      expect(await field.getAttribute('aria-invalid')).toBe('true');
      expect(await field.getAttribute('aria-describedby')).toBe(await fault.getAttribute('id'));
      expect(await numbers(page)).toEqual(before);
    }
    await type(page, 'chamber.plate', '1/4 in');
    await settled(page);
    expect(await fault.isVisible()).toBe(false);
    expect(await field.getAttribute('aria-invalid')).toBeNull();
    expect((await numbers(page)).steel_kg).not.toBe(before.steel_kg);
  });

  it('has done nothing it should not', () => expect(open.wrongs).toEqual([]));
});
