import { longExamples } from '../../support/examples.js';
import { estimatesAreSound } from './soundEstimates.js';

estimatesAreSound(longExamples);
