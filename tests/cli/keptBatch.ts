import { readFileSync } from 'node:fs';
import { parse } from 'yaml';
import { example } from './support/run.js';

const drawn = parse(readFileSync(example('plain-24.yaml'), 'utf8'));
export const designs = (count: number) =>
  Array.from({ length: count }, (_, i) => {
    const stacks = [{ ...drawn.stacks[0], height: `${28 + i} in` }];
    return `${JSON.stringify({ ...drawn, name: `pit ${i + 1}`, stacks })}\n`;
  }).join('');
export const FEW = 12;
export const stdin = designs(FEW);
export const linesIn = (text: string) => text.split('\n').length - 1;
