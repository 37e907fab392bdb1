import { describe, it } from 'vitest';
import { browserAndFolder } from './support/setUp.js';
import { expectStill } from './support/still.js';
import { PHONE } from './support/viewports.js';

const { browser, folder } = await browserAndFolder();

describe.skipIf(!browser)('a page that stands still', () => {
  it('while one slider of twenty moves, on a phone', () => expectStill(browser!, folder, PHONE, 20));
});
