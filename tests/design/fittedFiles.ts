/** A fitted file for tests, made up: a cook on PLAIN. */
export const FITTED = `fitted:
  logs:
    - { name: yard-cook.csv, hash: 0123456789abcdef, design: Backyard 24, fitted: 4.2 h, readings: 4536, error: 3.1 °F }
  values:
    - { field: innerConvection, is: 1.31, low: 1.22, high: 1.40, was: 1 }
    - { field: chamber.doorGap, times: 1.43, low: 1.20, high: 1.70, was: 2.0 in^2 }
  correlation: [[1, -0.4], [-0.4, 1]]
`;

/** The same with a text in place of another. */
export function fittedWith(from: string, to: string): string {
  if (!FITTED.includes(from)) throw new Error(`'${from}' is not in the text`);
  return FITTED.replace(from, () => to);
}

/** One with these values alone, which do not go together. */
export function fittedOf(...values: string[]): string {
  const rows = values.map((_, i) => `[${values.map((__, j) => (i === j ? 1 : 0)).join(', ')}]`);
  const head = FITTED.slice(0, FITTED.indexOf('  values:'));
  return `${head}  values:\n${values.map((value) => `    - { ${value} }\n`).join('')}  correlation: [${rows.join(', ')}]\n`;
}
