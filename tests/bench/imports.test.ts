import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { bundleScript } from '../support/bundleScript.mjs';

const scripts = ['tests/bench', 'tests/look'].flatMap((folder) =>
  readdirSync(folder)
    .filter((name) => /\.(mjs|ts)$/.test(name) && !name.endsWith('.test.ts'))
    .map((name) => `${folder}/${name}`),
);

describe('scripts that no test runs', () => {
  it.each(scripts)('%s imports what there is', async (script) => {
    const { errors, warnings } = await bundleScript(script);
    expect([...errors, ...warnings].map(({ text }) => text)).toEqual([]);
  });
});
