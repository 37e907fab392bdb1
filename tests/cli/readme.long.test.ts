import { describe, it } from 'vitest';
import { answered, expectAnswered } from './readme.js';

describe('the README', () => {
  it.each(answered)('$command: answers what stands under it', async (each) => void (await expectAnswered(each)));
});
