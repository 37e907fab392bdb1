import { describe, expect, it } from 'vitest';
import { example } from '../cli/support/run.js';
import { expectCommandsNumbers } from './support/commandNumbers.js';
import { openPage, settled, type } from './support/open.js';
import { browserAndFolder } from './support/setUp.js';

const { browser, folder } = await browserAndFolder();

const PLAIN = example('plain-24.yaml');

describe.skipIf(!browser)('a browser that blocks or lacks something', () => {
  it.each([
    [
      'starts no worker',
      () =>
        Object.assign(window, {
          Worker: class {
            constructor() {
              throw new DOMException('no', 'SecurityError');
            }
          },
        }),
    ],
    ['knows no workers', () => Reflect.deleteProperty(globalThis, 'Worker')],
    [
      'lets workers fail before they say anything',
      () => {
        const Real = window.Worker;
        Object.assign(window, {
          Worker: class extends Real {
            constructor() {
              super('data:text/javascript,throw new Error()');
            }
          },
        });
      },
    ],
  ])('%s: the page computes by itself what the command prints', async (_, before) => {
    const { page, close } = await openPage(browser!, folder.path, { design: PLAIN, before });
    await settled(page);
    await type(page, 'chamber.plate', '3/8 in');
    await settled(page);
    await expectCommandsNumbers(page);
    await page.locator('#chart svg').waitFor();
    await expect.poll(() => page.locator('#try-all p').first().textContent()).toContain('instead of what is drawn');
    await close();
  });

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
