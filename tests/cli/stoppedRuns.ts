import { example } from './support/run.js';

/** What a run must have ended within once it is told to [ms]; on a busy machine, within so many starts of the command. */
export const AT_ONCE = 1000;
export const STARTS = 8;

export interface Ended {
  code: number | null;
  /** from the signal to the end [ms]; null: it was done before */
  took: number | null;
}

export const pit = example('plain-24.yaml');
/** Each computes for far longer than it is given. */
export const LONG: [string, string[]][] = [
  ['estimate with a spread', ['estimate', pit, '--spread', '2000', '-o', 'a.txt', '--csv', 'a.csv']],
  ['compare', ['compare', pit, '--vary', 'all.plate=1/8 in|3/16 in|1/4 in|3/8 in|1/2 in|5/8 in', '-o', 'a.txt']],
  ['report', ['report', pit, '--spread', '2000', '-o', 'a.html']],
  ['size', ['size', pit, '--charts', 'charts', '-o', 'a.txt']],
  ['cook', ['cook', example('reverse-flow.yaml'), '-o', 'a.txt']],
  ['refine', ['refine', pit, '-o', 'a.txt']],
  ['evidence', ['evidence', '-o', 'a.txt']],
  ['fit', ['fit', pit, example('yard-cook.csv'), '--save', 'a.yaml', '-o', 'a.txt', '--charts', 'charts']],
];
