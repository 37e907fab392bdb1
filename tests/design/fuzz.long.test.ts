import { fuzz } from './fuzzing.js';

fuzz(1);
