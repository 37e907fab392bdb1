import { writeFileSync } from 'node:fs';
import { afterAll } from 'vitest';
import { scratch } from './support/run.js';

const HEADER = 'id,check,inputs,expected,unit,tolerance,kind,source,known';
export const row = (id: string, expected: number, check = 'airDensity') =>
  `${id},${check},"{""temperature"": ""27 °C"", ""pressure"": 101325}",${expected},kg/m3,1 %,derived,ideal gas,recomputed`;

/** A folder for case files that the tests of a file write. */
export function useCaseFiles() {
  const folder = scratch();
  afterAll(() => folder.remove());
  const cases = (name: string, ...lines: string[]): string => {
    const path = folder.at(name);
    writeFileSync(path, [HEADER, ...lines, ''].join('\n'));
    return path;
  };
  return { folder, cases };
}
