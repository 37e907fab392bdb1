import { describe, expect, it } from 'vitest';
import { openPage } from './support/open.js';
import { browserAndFolder } from './support/setUp.js';

const { browser, folder } = await browserAndFolder();

describe.skipIf(!browser)('a browser that blocks or lacks something', () => {
  it('says what to do where its script may not start', async () => {
    const { page, close } = await openPage(browser!, folder.path, {
      before: () => {
        const real = URL.createObjectURL;
        URL.createObjectURL = (what) =>
          what instanceof Blob && what.type === 'text/javascript' ? 'data:text/plain,no' : real(what);
      },
    });
    await expect.poll(() => page.locator('#waiting').textContent()).toMatch(/Another browser may|Try another one/);
    await close();
  });
});
