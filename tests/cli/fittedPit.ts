import { readFileSync, writeFileSync } from 'node:fs';
import { FITTED } from '../design/fittedFiles.js';
import { eachScratch, example } from './support/run.js';

export const plain = readFileSync(example('plain-24.yaml'), 'utf8');

/** What a design says that rests on it. */
export const RESTS =
  "Rests on a measured cook: how well gas heats the walls and gap of the chamber door fitted to yard-cook.csv (4 h 12 min on 'Backyard 24'; 3.1 °F off where it was not fitted).";
export const flat = (text: string) => text.replace(/\s+/g, ' ');

/** A folder of its own for each test, with a pit that names a fitted file. */
export const eachFittedPit = () =>
  eachScratch((fresh) => {
    writeFileSync(fresh.at('yard.fitted.yaml'), FITTED);
    writeFileSync(fresh.at('pit.yaml'), `${plain}fitted: yard.fitted.yaml\n`);
  });
