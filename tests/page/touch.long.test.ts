import { describe, it } from 'vitest';
import { expectScrolled, useTouched } from './support/finger.js';
import { browserAndFolder } from './support/setUp.js';

const { browser, folder } = await browserAndFolder();

describe.skipIf(!browser)('under a finger', () => {
  const touched = useTouched(browser!, folder);

  it('a swipe up or down over any slider scrolls the page and changes nothing', () => expectScrolled(touched, 1));
});
