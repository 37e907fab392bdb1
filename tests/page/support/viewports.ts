import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';

export const PHONE = { width: 375, height: 667 };
export const DESK = { width: 1600, height: 1000 };
export const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

export interface Violation {
  id: string;
  impact: string | null;
  nodes: { target: unknown[] }[];
}
