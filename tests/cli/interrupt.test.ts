import { afterEach, beforeAll, beforeEach, describe, it } from 'vitest';
import { expectEnded, folderWithKept, LONG, measurePatience } from './stoppedRuns.js';

let folder: ReturnType<typeof folderWithKept>;
let patience: number;
beforeAll(async () => {
  patience = await measurePatience();
});
beforeEach(() => {
  folder = folderWithKept();
});
afterEach(() => folder.remove());

describe('Ctrl-C while it computes', () => {
  it.each(LONG.slice(-1))('ends %s at once, with nothing left behind', (_, args) =>
    expectEnded(folder, args, patience),
  );
});
