import { readFileSync, statSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { example, pitwright } from '../cli/support/run.js';
import { expectGrateAndDraft, flat } from './support/answer.js';
import { expectCommandsNumbers } from './support/commandNumbers.js';
import { numbers, settled, slide, type } from './support/open.js';
import { browserAndFolder, onePage } from './support/setUp.js';

const { browser, folder } = await browserAndFolder();

const PLAIN = example('plain-24.yaml');
const PATIENT = { timeout: 150_000 };

describe.skipIf(!browser)('the page, opened from a file', () => {
  const open = onePage(browser!, folder.path, { design: PLAIN, quiet: ['step', 'spread'] });

  const csv = folder.at('told.csv');
  let command: string;
  beforeAll(async () => {
    const { code, stdout, stderr } = await pitwright(['estimate', PLAIN, '--full', '--csv', csv]);
    expect(code, stderr).toBe(0);
    command = flat(stdout);
  });

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

  it('charts are read under the pointer, switched curve by curve, and saved with all their numbers', async () => {
    const { page } = open;
    const chart = page.locator('#chart > svg');
    const values = async () =>
      (await page.locator('#chart-curves button').allTextContents()).map((text) => text.replace(/°F$/, ' °F').trim());
    await chart.waitFor();
    await chart.scrollIntoViewIfNeeded();
    const box = (await chart.boundingBox())!;
    // where the pit has settled on the target, the gauge reads it
    await page.mouse.move(box.x + box.width * 0.62, box.y + box.height / 2);
    await expect
      .poll(async () => (await values()).find((text) => text.startsWith('middle')))
      .toMatch(/^middle *250 *°F$/);
    expect(await page.locator('#chart > svg g circle').count()).toBe(5);
    const before = (await page.locator('#curves').boundingBox())!.height;
    await page.mouse.move(5, 5);
    await expect.poll(() => page.locator('#chart > svg g circle').count()).toBe(0);
    expect((await page.locator('#curves').boundingBox())!.height).toBe(before);
    // and with the keyboard
    await page.locator('#chart').focus();
    await page.keyboard.press('ArrowRight');
    await expect.poll(() => page.locator('#chart > svg g circle').count()).toBe(5);

    const firebox = page.locator('#chart-curves button', { hasText: 'firebox' });
    await firebox.click();
    await expect.poll(() => firebox.getAttribute('aria-pressed')).toBe('false');
    await expect.poll(() => chart.locator('text', { hasText: /^firebox$/ }).count()).toBe(0);

    const [download] = await Promise.all([page.waitForEvent('download'), page.locator('#chart-csv').click()]);
    expect(readFileSync(await download.path(), 'utf8')).toBe(readFileSync(csv, 'utf8'));
  });

  it('a cook’s day comes after the first numbers, in the command’s own, with the vents in use as a chart', async () => {
    const { page } = open;
    const line = page.locator('#answer-cook dd');
    await expect.poll(() => line.textContent(), PATIENT).toContain('From the match');
    const said =
      /^A ([\d.]+ lb) split (every [\d.]+ \w+): reads (.*) to (.*)\. From the match it takes (.*) \((.*)\)\.$/;
    const [, split, every, low, high, match, range] = said.exec((await line.textContent())!)!;
    expect(command).toContain(`lays on ${split} of splits`);
    expect(command).toContain(every);
    expect(command).toContain(`goes from ${low} °F to ${high}`);
    expect(command).toContain(`after ${match} (${range})`);
    const sentences = async () => (await page.locator('#sentences p').allTextContents()).map(flat);
    expect((await sentences()).length).toBeGreaterThan(0);
    await expect.poll(async () => (await sentences()).filter((each) => !command.includes(each)), PATIENT).toEqual([]);
    await page.locator('[data-chart="vents"]').click();
    await page.locator('#chart svg[aria-label^="Vents in use"]').waitFor(PATIENT);
    await page.locator('#chart-details summary').click();
    await expect.poll(() => page.locator('#chart-table tbody tr').count()).toBe(12);
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

  it('the drawing drags, opens what is tapped, and has one scale of colours', async () => {
    const { page } = open;
    const stack = page.locator('[data-field="stacks[0].height"]');
    const grip = page.locator('[data-grip="stacks[0].height"]');
    await grip.scrollIntoViewIfNeeded();
    const { x, y, width, height } = (await grip.boundingBox())!;
    await page.mouse.move(x + width / 2, y + height / 2);
    await page.mouse.down();
    await page.mouse.move(x + width / 2, y + height / 2 - 30, { steps: 3 });
    await page.mouse.up();
    const inches = Number.parseInt(await stack.inputValue());
    expect(inches).toBeGreaterThan(40);
    expect(await grip.getAttribute('aria-valuetext')).toBe(`${inches} in`);
    // one drag is one step back; keys are one step of the slider
    await page.locator('#undo').click();
    await expect.poll(() => stack.inputValue()).toBe('36 in');
    await grip.focus();
    await page.keyboard.press('ArrowUp');
    await expect.poll(() => stack.inputValue()).toBe('37 in');

    // the lower edge of a shell: what it is dragged by is half of what the diameter grows by
    const diameter = page.locator('[data-field="chamber.diameter"]');
    const edge = (await page.locator('[data-grip="chamber.diameter"]').boundingBox())!;
    const [across, low] = [edge.x + edge.width / 2, edge.y + edge.height / 2];
    await page.mouse.move(across, low);
    await page.mouse.down();
    await page.mouse.move(across, low + 10, { steps: 3 });
    await page.mouse.up();
    expect(Number.parseInt(await diameter.inputValue())).toBeGreaterThan(24);
    await page.locator('#undo').click();
    await expect.poll(() => diameter.inputValue()).toBe('24 in');

    const groups = page.locator('#fields details');
    await groups.evaluateAll((all) => all.forEach((each) => ((each as HTMLDetailsElement).open = false)));
    await page.locator('[data-part="chamber"]').click({ position: { x: 30, y: 6 } });
    await expect.poll(() => page.locator('[data-field="chamber.length"]').isVisible()).toBe(true);
    expect(await page.locator('[data-field="firebox.length"]').isVisible()).toBe(false);

    const drawn = page.locator('#drawing svg text');
    const legend = async () => (await drawn.allTextContents()).filter((text) => /^(\d00\+?|0)$/.test(text));
    expect(await legend()).toEqual(['0', '100', '200', '300', '400', '500', '600+']);
    expect((await drawn.allTextContents()).filter((text) => text.endsWith('°F')).length).toBeGreaterThan(7);
    await page.locator('[data-field="fire.target"]').evaluate((field) => (field.closest('details')!.open = true));
    await page.locator('[data-field="fire.target"]').fill('325 °F');
    await page.locator('[data-field="fire.target"]').blur();
    await settled(page);
    expect(await legend()).toEqual(['0', '100', '200', '300', '400', '500', '600+']);
  });
  it('has done nothing it should not', () => expect(open.wrongs).toEqual([]));
});
