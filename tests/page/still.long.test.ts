import { describe, it } from 'vitest';
import { browserAndFolder } from './support/setUp.js';
import { expectStill } from './support/still.js';
import { DESK, PHONE } from './support/viewports.js';

const { browser, folder } = await browserAndFolder();

describe.skipIf(!browser)('a page that stands still', () => {
  it.each([
    ['desk', DESK],
    ['phone', PHONE],
  ] as const)('while any slider moves, on a %s', (_, viewport) => expectStill(browser!, folder, viewport, 1));
});
