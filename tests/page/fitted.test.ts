import { readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { FITTED } from '../design/fittedFiles.js';
import { example } from '../cli/support/run.js';
import { openPage, saved, settled } from './support/open.js';
import { browserAndFolder } from './support/setUp.js';

const { browser, folder } = await browserAndFolder();

describe.skipIf(!browser)('the page of a design that names a fitted file', () => {
  it('says what cook its numbers rest on, and saves a design that stands for itself', async () => {
    writeFileSync(folder.at('yard.fitted.yaml'), FITTED);
    writeFileSync(folder.at('pit.yaml'), `${readFileSync(example('plain-24.yaml'), 'utf8')}fitted: yard.fitted.yaml\n`);
    const { page } = await openPage(browser!, folder.path, { design: folder.at('pit.yaml'), quiet: true });
    await settled(page);
    const told = (await page.locator('#sentences p').allTextContents()).join(' ');
    expect(told).toContain(
      'Rests on a measured cook: how well gas heats the walls and gap of the chamber door fitted to',
    );
    const { text } = await saved(page);
    expect(text).toContain('name: yard-cook.csv');
    expect(text).not.toContain('yard.fitted.yaml');
  });
});
