import { describe, it } from 'vitest';
import { expectTextAlone, HOSTILE } from './support/hostile.js';
import { browserAndFolder } from './support/setUp.js';
import { DESK, expectAccessible } from './support/viewports.js';

const { browser, folder } = await browserAndFolder();

describe.skipIf(!browser)('for everybody', () => {
  it.each([['desk', 'light', DESK]] as const)('no fault of accessibility on a %s, %s', (_, colorScheme, viewport) =>
    expectAccessible(browser!, folder, colorScheme, viewport, true),
  );
});

describe.skipIf(!browser)('hostile designs', () => {
  it.each(HOSTILE.slice(0, 1))('show name %i as text and nothing else', (i) => expectTextAlone(browser!, folder, i));
});
