import { describe, it } from 'vitest';
import { expectClear } from './support/clearDrawing.js';
import { browserAndFolder } from './support/setUp.js';

const { browser, folder } = await browserAndFolder();

describe.skipIf(!browser)('the drawing on the page', () => {
  it.each(['offset-with-upright', 'tank-on-trailer', 'reverse-flow'])(
    'of %s: no text crosses the outline of a part, on a desk, a tablet and a phone',
    (name) => expectClear(browser!, folder.path, name),
  );
});
