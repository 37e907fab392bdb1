import { describe, it } from 'vitest';
import { eachKeptFolder, expectEnded, LONG } from './stoppedRuns.js';

const folder = eachKeptFolder();

describe('Ctrl-C while it computes', () => {
  it.each(LONG.slice(-1))('ends %s at once, with nothing left behind', (_, args) => expectEnded(folder, args));
});
