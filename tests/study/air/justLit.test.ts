import { describe, expect, it } from 'vitest';
import { fullFire, justLit } from '../../../src/study/air/states.js';
import { JUST_LIT } from '../../../src/study/size/limits.js';
import { exampleDesign } from '../../support/examples.js';

describe('a fire just lit over cold steel', () => {
  it.each(['plain-24.yaml', 'reverse-flow.yaml'])('%s: draws the more the more of it burns', (name) => {
    const full = fullFire(exampleDesign(name))!;
    // where little burns gas is as cold as its walls long before a cell's end, and heavier lies over lighter
    const drafts = JUST_LIT.map((share) => justLit(full, share)?.theoretical_Pa);
    expect(drafts).not.toContain(undefined);
    expect([...drafts].sort((a, b) => a! - b!)).toEqual(drafts);
  });
});
