import { describe, it } from 'vitest';
import { expectTextAlone, HOSTILE } from './support/hostile.js';
import { browserAndFolder } from './support/setUp.js';
import { DESK, expectAccessible, expectNarrow, PHONE } from './support/viewports.js';

const { browser, folder } = await browserAndFolder();

describe.skipIf(!browser)('for everybody', () => {
  it.each([['desk', 'light', DESK]] as const)('no fault of accessibility on a %s, %s', (_, colorScheme, viewport) =>
    expectAccessible(browser!, folder, colorScheme, viewport),
  );

  it.each([['phone', PHONE]] as const)('never scrolls sideways on a %s', (_, viewport) =>
    expectNarrow(browser!, folder, viewport),
  );
});

describe.skipIf(!browser)('hostile designs', () => {
  it.each(HOSTILE.slice(0, 1))('show name %i as text and nothing else', (i) => expectTextAlone(browser!, folder, i));
});
