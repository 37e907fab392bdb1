import { ESLint } from 'eslint';
import { describe, expect, it } from 'vitest';

const eslint = new ESLint();

/** Names of the rules that a file of this content at this place would break. */
async function broken(filePath: string, code: string): Promise<(string | null)[]> {
  const [result] = await eslint.lintText(code, { filePath });
  return result.messages.map(({ ruleId }) => ruleId);
}

describe('the direction of imports', () => {
  it.each([
    ['src/units/wrong.ts', '../design/design.js'],
    ['src/physics/wrong.ts', '../design/design.js'],
    ['src/solve/wrong.ts', '../physics/air.js'],
    ['src/solve/wrong.ts', '../design/design.js'],
    ['src/design/wrong.ts', '../network/types.js'],
    ['src/network/wrong.ts', '../study/estimate/result.js'],
    ['src/study/wrong.ts', '../fit/fit.js'],
    ['src/study/wrong.ts', '../words/labels.js'],
    ['src/words/wrong.ts', '../draw/scene.js'],
    ['src/draw/wrong.ts', '../charts/axes.js'],
    ['src/charts/wrong.ts', '../report/csv.js'],
    ['src/report/wrong.ts', '../cli/exit.js'],
  ])('%s must not import %s', async (place, other) => {
    const code = `import type * as other from '${other}';\nexport type Other = typeof other;\n`;
    expect(await broken(place, code)).toContain('import-x/no-restricted-paths');
  });

  it.each([
    ['src/study/right.ts', '../physics/wood.js'],
    ['src/design/right.ts', '../units/index.js'],
    ['src/design/right.ts', '../physics/wood.js'],
    ['src/report/right.ts', '../words/labels.js'],
    ['src/cli/right.ts', '../study/estimate/result.js'],
  ])('%s may import %s', async (place, other) => {
    const code = `import type * as other from '${other}';\nexport type Other = typeof other;\n`;
    expect(await broken(place, code)).toEqual([]);
  });
});

describe('a circle of imports', () => {
  it('is caught, however a name stands beside types', async () => {
    const code =
      "import { checkDoors, type Unused } from './senseDoors.js';\nexport const found = checkDoors as Unused;\n";
    expect(await broken('src/design/faults.ts', code)).toContain('import-x/no-cycle');
  });
});

describe('what only the command may touch', () => {
  it.each([
    "import 'node:fs';",
    "import 'fs';",
    'export const id = process.pid;',
    "export const b = Buffer.from('a');",
  ])('a study with %s is caught', async (code) => {
    const rules = await broken('src/study/wrong.ts', `${code}\n`);
    expect(rules.some((rule) => rule?.startsWith('no-restricted-'))).toBe(true);
  });

  it.each(['Math.random()', 'Date.now()', 'performance.now()'])('a model with %s is caught', async (call) => {
    expect(await broken('src/physics/wrong.ts', `export const x = ${call};\n`)).toContain('no-restricted-properties');
  });
});
