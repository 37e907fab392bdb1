import { describe, it } from 'vitest';
import { expectItself } from './support/blocked.js';
import { browserAndFolder } from './support/setUp.js';

const { browser, folder } = await browserAndFolder();

describe.skipIf(!browser)('a browser that blocks or lacks something', () => {
  it.each([
    ['knows no workers', () => void Reflect.deleteProperty(globalThis, 'Worker')],
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
  ])('%s: the page computes by itself what the command prints', (_, before) => expectItself(browser!, folder, before));
});
