import { describe, it } from 'vitest';
import { followEvents, SEEDS } from './followedEvents.js';

describe('events in random designs', () => {
  it.each(SEEDS.slice(1))('design %i: none throws, none gives what is no number, heat and air add up', followEvents);
});
