import type { Browser } from 'playwright-core';
import { afterAll, beforeAll } from 'vitest';
import { scratch } from '../../cli/support/run.js';
import { launchBrowser } from './browser.js';
import { openPage, settled, type OpenPage } from './open.js';

/** A browser for the tests of a file, and a folder for what they write, which goes when the tests are done. */
export async function browserAndFolder(): Promise<{ browser: Browser | null; folder: ReturnType<typeof scratch> }> {
  const browser = await launchBrowser();
  const folder = scratch();
  afterAll(() => folder.remove());
  return { browser, folder };
}

/** One page for all tests of a suite, opened before the first and closed after the last. */
export function onePage(...asked: Parameters<typeof openPage>): Pick<OpenPage, 'page' | 'wrongs'> {
  let open: OpenPage;
  beforeAll(async () => {
    open = await openPage(...asked);
    await settled(open.page);
  });
  afterAll(() => open.close());
  return {
    get page() {
      return open.page;
    },
    get wrongs() {
      return open.wrongs;
    },
  };
}
