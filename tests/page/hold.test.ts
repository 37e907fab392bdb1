import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { formatFault } from '../../src/design/faults.js';
import { readDesign } from '../../src/design/read.js';
import { controlsFor } from '../../src/page/controls.js';
import { gripsOf, partBoxes } from '../../src/page/grips.js';
import { Workbench } from '../../src/page/workbench.js';
import { example, pitwright } from '../cli/support/run.js';
import { textOf } from './support/bench.js';
import { settled } from './support/open.js';
import { browserAndFolder, onePage } from './support/setUp.js';

const { browser, folder } = await browserAndFolder();

const PLAIN = example('plain-24.yaml');
const PATIENT = { timeout: 150_000 };
const flat = (text: string) => text.replace(/\s+/g, ' ');

describe('handles of the drawing', () => {
  it.each(['plain-24', 'offset-with-upright', 'tank-on-trailer', 'insulated-upright', 'reverse-flow'])(
    'of %s: what one is dragged by is what its field grows by on the drawing',
    (name) => {
      const { design, text } = new Workbench(textOf(name)).current;
      const side = { left: 40, ground: 500, scale: 100, lettering: 12 };
      const grips = gripsOf(design, side);
      const numbers = controlsFor(design, text).flatMap(({ controls }) => controls);
      expect(grips.length).toBeGreaterThan(1);
      for (const part of [design.firebox, design.chamber]) {
        const field = `${part === design.chamber ? 'chamber' : 'firebox'}.${part?.shape === 'round' ? 'diameter' : 'height'}`;
        expect(grips.some((grip) => grip.field === field)).toBe(part !== undefined);
      }
      for (const grip of grips) {
        const control = numbers.find(({ id }) => id === grip.field);
        if (control?.type !== 'quantity') continue;
        // the same pit with the field two centimetres larger has the handle that far on
        const larger = text.copy();
        larger.set(control.path, `${(control.value + 0.02) * 1000} mm`);
        const read = readDesign(larger.text(), { fileName: 'x', alone: true });
        if (read.faults) throw new Error(`${grip.field}: ${formatFault(read.faults[0])}`);
        const moved = gripsOf(read.design, side).find(({ field }) => field === grip.field)!;
        if (grip.perDown !== 0) expect(moved.y - grip.y, grip.field).toBeCloseTo(0.02 / grip.perDown, 6);
        // the firebox stays where it is and pushes all else away
        else if (grip.perRight > 0) expect(moved.x - grip.x, grip.field).toBeCloseTo(0.02 / grip.perRight, 6);
        else expect(grip.perRight).toBeCloseTo(-0.01, 9);
      }
      const boxes = partBoxes(design, side).map(({ block }) => block);
      expect(boxes).toEqual(expect.arrayContaining(['firebox', 'stacks', ...(design.chamber ? ['chamber'] : [])]));
    },
  );
});

describe.skipIf(!browser)('taken hold of', () => {
  const open = onePage(browser!, folder.path, { design: PLAIN, quiet: ['step', 'spread'] });
  const csv = folder.at('told.csv');
  let command: string;
  beforeAll(async () => {
    const { code, stdout, stderr } = await pitwright(['estimate', PLAIN, '--full', '--csv', csv]);
    expect(code, stderr).toBe(0);
    command = flat(stdout);
  });

  it('charts are read under the pointer, switched curve by curve, and saved with all their numbers', async () => {
    const { page, wrongs } = open;
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
    expect(wrongs).toEqual([]);
  });

  it('a cook’s day comes after the first numbers, in the command’s own, with the vents in use as a chart', async () => {
    const { page, wrongs } = open;
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
    expect(wrongs).toEqual([]);
  });

  it('the drawing drags, opens what is tapped, and has one scale of colours', async () => {
    const { page, wrongs } = open;
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
    expect(wrongs).toEqual([]);
  });
});
