import { writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { example } from '../cli/support/run.js';
import { expectCommandsNumbers, expectKeptWhole } from './support/commandNumbers.js';
import { numbers, openPage, saved, settled, slide, type } from './support/open.js';
import { browserAndFolder, onePage } from './support/setUp.js';

const { browser, folder } = await browserAndFolder();

describe.skipIf(!browser)('the page, opened from a file', () => {
  const open = onePage(browser!, folder.path, { design: example('plain-24.yaml'), quiet: ['step', 'spread'] });

  it('shows what the command prints, before anything is touched', () => expectCommandsNumbers(open.page));

  it('takes shop fractions, feet and inches, and gauges as typed', async () => {
    const { page } = open;
    await type(page, 'firebox.plate', '5/16 in');
    await type(page, 'chamber.length', `5' 6"`);
    await type(page, 'chamber.plate', '11 ga');
    await type(page, 'fire.heat', '11 lb wood/h');
    await settled(page);
    expect(await page.locator('.fault:visible').count()).toBe(0);
    await expectCommandsNumbers(page);
    const { text } = await saved(page);
    expect(text).toContain('plate: 5/16 in');
    expect(text).toContain('plate: 11 ga');
  });

  it('changes round to square and back, and the firebox still holds', async () => {
    const { page } = open;
    await page.locator('[data-field="firebox.shape"]').selectOption('square');
    await settled(page);
    expect(await page.locator('[data-field="firebox.width"]').inputValue()).toBe('24 in');
    await type(page, 'firebox.height', '20 in');
    await settled(page);
    await expectCommandsNumbers(page);
    await page.locator('[data-field="firebox.shape"]').selectOption('round');
    await settled(page);
    expect(await page.locator('[data-field="firebox.diameter"]').inputValue()).toBe('24 in');
    await expectCommandsNumbers(page);
  });

  it('takes sizes that only fit together, once the last of them fits', async () => {
    const { page } = open;
    await page.locator('summary', { hasText: 'Heights above the ground' }).click();
    const before = await numbers(page);
    await type(page, 'chamber.centre', '22 in');
    await type(page, 'throat.centre', '26 in');
    await expect.poll(() => page.locator('.fault:visible').count()).toBe(2);
    expect(await page.locator('.fault:visible').allTextContents()).toEqual([
      expect.stringContaining("'26 in' is below where firebox and chamber meet"),
      expect.stringMatching(/^throat\.centre: '34 in' is above .*; stacks\[0\]\.base: '42 in' is outside the chamber/),
    ]);
    expect(await numbers(page)).toEqual(before);
    await type(page, 'stacks[0].base', '28 in');
    await settled(page);
    expect(await page.locator('.fault:visible').count()).toBe(0);
    await expectCommandsNumbers(page);
    for (const [field, height] of [
      ['stacks[0].base', '42 in'],
      ['throat.centre', '34 in'],
      ['chamber.centre', '40 in'],
    ]) {
      await type(page, field, height);
    }
    await settled(page);
    // what leaked on the way keeps its row, empty
    const after = Object.entries(await numbers(page)).filter(([row, value]) => row in before || value !== '–');
    expect(Object.fromEntries(after)).toEqual(before);
  });

  it('ends a fast drag at the numbers of where it ended', async () => {
    const { page } = open;
    await page.locator('[data-slider="chamber.length"]').evaluate(async (slider) => {
      for (let place = 20; place <= 80; place++) {
        (slider as HTMLInputElement).value = String(place);
        slider.dispatchEvent(new Event('input', { bubbles: true }));
        if (place % 4 === 0) await new Promise((done) => setTimeout(done, 5));
      }
    });
    await settled(page);
    expect(await page.locator('[data-field="chamber.length"]').inputValue()).toBe('92 in');
    await expectCommandsNumbers(page);
  });

  it('draws curves of every kind, with a table of the same', async () => {
    const { page } = open;
    await page.locator('#chart-details summary').click();
    for (const chart of ['steel', 'gas', 'loss', 'draft', 'options', 'thermometer']) {
      await page.locator(`[data-chart="${chart}"]`).click();
      const label = (await page.locator(`[data-chart="${chart}"]`).textContent())!;
      await page.locator(`#chart svg[aria-label^="${label}"]`).waitFor();
      expect(await page.locator('#chart svg path').count()).toBeGreaterThan(5);
      await expect.poll(() => page.locator('#chart-table tbody tr').count()).toBeGreaterThan(0);
    }
    expect(await page.locator('#chart-table').textContent()).toContain('°F');
  });
});

describe.skipIf(!browser)('designs from files', () => {
  it.each(['insulated-upright.yaml', 'boxed-22.yaml', 'reverse-flow.yaml', 'wind-cold.yaml'])(
    'opens %s, keeps what it has no control for, and saves what the command reads alike',
    (name) => expectKeptWhole(browser!, folder, name),
  );

  it('says why a file can not be opened, every fault with its line, and keeps what was there', async () => {
    const { page, wrongs, close } = await openPage(browser!, folder.path);
    await settled(page);
    const before = await numbers(page);
    writeFileSync(folder.at('bad.yaml'), 'schema: 1\nname: Bad\nfirebox: { shape: round, plate: 0.25 }\n');
    await page.locator('#open').setInputFiles(folder.at('bad.yaml'));
    await page.locator('#messages').waitFor();
    const told = await page.locator('#messages').textContent();
    expect(told).toContain('bad.yaml:3:');
    expect(told).toContain('firebox.plate');
    expect(await numbers(page)).toEqual(before);
    writeFileSync(folder.at('noise.yaml'), Buffer.from([0xff, 0, 1, 2, 3, 0x80, 0xfe]));
    await page.locator('#open').setInputFiles(folder.at('noise.yaml'));
    await expect.poll(() => page.locator('#messages').textContent()).toContain('not text');
    expect(wrongs).toEqual([]);
    await close();
  });
});

describe.skipIf(!browser)('options side by side', () => {
  it('keeps each, tells the differences, and prints one Letter page with all of them', async () => {
    const { page, wrongs, close } = await openPage(browser!, folder.path, {
      design: example('offset-with-upright.yaml'),
    });
    await settled(page);
    await page.locator('#add').click();
    await type(page, 'chamber.plate', '1/2 in');
    await settled(page);
    await page.locator('#add').click();
    await slide(page, 'chamber.insulation.thickness', 4);
    await settled(page);
    await page.locator('.option-name').nth(2).fill('Wrapped');
    const row = (id: string) => page.locator(`tr[data-row="${id}"] td`);
    expect(await row('soaked_s').count()).toBe(3);
    expect(await row('steel_kg').nth(1).locator('.difference').textContent()).toMatch(/^\+\d+ lb$/);
    expect(await row('hold.thermometer_K.middle').nth(1).locator('.difference').textContent()).toBe('same');
    expect(await row('hold.wood_kg_per_s').nth(2).locator('.difference').textContent()).toMatch(/^−[\d.]+ lb\/h$/);
    expect(await row('hold.wood_kg_per_s').nth(0).locator('.difference').isVisible()).toBe(false);

    await page.locator('input[name="option"]').first().check();
    expect(await page.locator('[data-field="chamber.plate"]').inputValue()).toBe('1/4 in');

    await page.locator('#buyer figure').first().waitFor({ state: 'attached' });
    await expect.poll(() => page.locator('#buyer').textContent(), { timeout: 10_000 }).toContain('Wrapped');
    const pdf = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
    expect(pdf.match(/\/Type\s*\/Page\b(?!s)/g)).toHaveLength(1);
    expect(/\/MediaBox\s*\[\s*0 0 ([\d.]+) ([\d.]+)/.exec(pdf)!.slice(1, 3).map(Number)).toEqual([612, 792]);
    await page.emulateMedia({ media: 'print' });
    const cut = await page.locator('#buyer').evaluate((sheet) => sheet.scrollHeight - sheet.clientHeight);
    expect(cut).toBeLessThanOrEqual(1);
    expect(await page.locator('main').isVisible()).toBe(false);
    await page.emulateMedia({ media: 'screen' });

    await page.getByRole('button', { name: 'Remove Chamber plate 1/2 in' }).click();
    expect(await row('soaked_s').count()).toBe(2);
    expect(wrongs).toEqual([]);
    await close();
  });
});
