import { describe, it } from 'vitest';
import { expectWhole } from './support/printed.js';
import { browserAndFolder } from './support/setUp.js';
import { asDrawn, compared, designOf } from '../report/support/reports.js';

const { browser, folder } = await browserAndFolder();

describe.skipIf(!browser)('the HTML report in a browser', () => {
  it.each([['one design', () => compared(asDrawn(designOf('offset-with-upright')))]])(
    '%s: nothing goes wrong, and the buyer has all of it on one page',
    (_, make) => expectWhole(browser!, folder.path, make()),
  );
});
