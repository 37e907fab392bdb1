import importX, { createNodeResolver } from 'eslint-plugin-import-x';
import tseslint from 'typescript-eslint';

/**
 * What each folder of src may import beside itself. Arrows point one way, from what a person sees to what nature does:
 * cli, page -> report -> charts -> draw -> words -> study, fit, verify -> network -> solve, physics; network, study, fit -> design ->
 * units, physics. A folder may skip a step, and never look back.
 */
const mayImport = {
  units: [],
  physics: [],
  solve: [],
  design: ['physics', 'units'],
  network: ['design', 'physics', 'solve', 'units'],
  study: ['network', 'design', 'physics', 'solve', 'units'],
  fit: ['study', 'network', 'design', 'physics', 'solve', 'units'],
  verify: ['study', 'network', 'design', 'physics', 'solve', 'units'],
  words: ['study', 'fit', 'verify', 'design', 'physics', 'units'],
  draw: ['words', 'study', 'design', 'units'],
  charts: ['draw', 'words', 'study', 'fit', 'verify', 'design', 'solve', 'units'],
  report: ['charts', 'draw', 'words', 'study', 'fit', 'verify', 'design', 'solve', 'units'],
  page: ['report', 'charts', 'draw', 'words', 'study', 'design', 'units'],
  'index.ts': ['report', 'words', 'study', 'fit', 'network', 'design', 'physics', 'solve', 'units'],
  cli: [
    'page',
    'report',
    'charts',
    'draw',
    'words',
    'study',
    'fit',
    'verify',
    'network',
    'design',
    'physics',
    'solve',
    'units',
    'index.ts',
  ],
};

const zones = Object.entries(mayImport).flatMap(([folder, allowed]) => {
  const from = Object.keys(mayImport).filter((other) => other !== folder && !allowed.includes(other));
  const message = `src/${folder} may import ${allowed.join(', ') || 'nothing of ours'}: arrows point one way.`;
  return from.length === 0 ? [] : [{ target: `./src/${folder}`, from: from.map((other) => `./src/${other}`), message }];
});

const outsideWorld = 'Only src/cli touches files, streams and the process; pass the data in.';
const modelsArePure = 'Models are pure: no clock and no randomness; a random study takes a seeded generator.';

export default tseslint.config(
  { ignores: ['dist/', 'out/', 'coverage/', 'node_modules/'] },
  ...tseslint.configs.recommended,
  {
    plugins: { 'import-x': importX },
    settings: {
      // without these no file of ours counts as code, and no circle is seen
      'import-x/extensions': ['.ts'],
      'import-x/parsers': { '@typescript-eslint/parser': ['.ts'] },
      'import-x/resolver-next': [
        createNodeResolver({ extensions: ['.ts', '.js'], extensionAlias: { '.js': ['.ts', '.js'] } }),
      ],
    },
    rules: {
      eqeqeq: ['error', 'always', { null: 'ignore' }],
      'no-console': 'error',
      'import-x/no-restricted-paths': ['error', { zones }],
      'import-x/no-cycle': 'error',
      '@typescript-eslint/consistent-type-imports': ['error', { fixStyle: 'separate-type-imports' }],
    },
  },
  {
    files: ['src/**/*.ts'],
    ignores: ['src/cli/**'],
    rules: {
      'no-restricted-imports': [
        'error',
        {
          patterns: [
            {
              regex:
                '^(node:.*|fs|fs/promises|path|os|process|stream|child_process|worker_threads|url|util|events|crypto|http|net)$',
              message: outsideWorld,
            },
          ],
        },
      ],
      'no-restricted-globals': [
        'error',
        ...['process', 'console', 'Buffer', '__dirname', '__filename', 'require', 'fetch'].map((name) => ({
          name,
          message: outsideWorld,
        })),
      ],
    },
  },
  {
    files: ['src/{units,physics,solve,network,study,design,fit,verify}/**/*.ts'],
    rules: {
      'no-restricted-properties': [
        'error',
        { object: 'Math', property: 'random', message: modelsArePure },
        { object: 'Date', property: 'now', message: modelsArePure },
        { object: 'performance', property: 'now', message: modelsArePure },
      ],
    },
  },
  {
    files: ['tests/bench/**', 'tests/look/**', '*.config.*'],
    rules: { 'no-console': 'off' },
  },
);
