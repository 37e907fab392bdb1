import { describe, it } from 'vitest';
import { browserAndFolder } from './support/setUp.js';
import { DESK, expectAccessible } from './support/viewports.js';

const { browser, folder } = await browserAndFolder();

describe.skipIf(!browser)('for everybody', () => {
  it.each([['desk', 'light', DESK]] as const)('no fault of accessibility on a %s, %s', (_, colorScheme, viewport) =>
    expectAccessible(browser!, folder, colorScheme, viewport, true),
  );
});
