import { it } from 'vitest';
import { expectWeight } from './wallPits.js';

it.each([5, 8])('walls of a network have the weight of the design’s, in %d levels (derived)', expectWeight);
