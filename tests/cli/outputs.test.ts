import { linkSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeEach, describe, expect, it } from 'vitest';
import { claimInput, FITTED_FILE } from '../../src/cli/claims.js';
import { openSink } from '../../src/cli/output.js';
import { FITTED } from '../design/fittedFiles.js';
import { design, eachPitFolder, expectBothStay, expectKept, expectNoName, expectNothingStays } from './outputFolder.js';

const folder = eachPitFolder();

describe('charts', () => {
  it.each([['by a hard link there', (at: string) => linkSync(join(at, '../../pit.yaml'), at), 'pit.yaml']])(
    'never overwrite the design: %s',
    (_, put, named) => expectKept(folder, put, named),
  );

  it('take no folder that another output has for its name', async () => {
    const run = await folder.run(['estimate', 'pit.yaml', '-o', 'new/c', '--charts', 'new/c']);
    expect(run).toMatchObject({ code: 2, stdout: '' });
    expect(folder.listed()).toEqual(['pit.yaml']);
  });
});

describe('an output that is the input', () => {
  beforeEach(() => {
    symlinkSync('pit.yaml', folder.at('link.yaml'));
    linkSync(folder.at('pit.yaml'), folder.at('hard.yaml'));
    symlinkSync('.', folder.at('here'));
  });

  it.each(['hard.yaml'])('%s: exit 2, both stay', (name) => expectBothStay(folder, name));

  it('fitted values: refused, but that a fit may renew them', async () => {
    writeFileSync(folder.at('yard.fitted.yaml'), FITTED);
    writeFileSync(folder.at('fitted.yaml'), `${design}\nfitted: yard.fitted.yaml\n`);
    const { code, stderr } = await folder.run(['check', 'fitted.yaml', '-o', 'yard.fitted.yaml']);
    expect(code).toBe(2);
    expect(stderr).toMatch(/would overwrite the fitted values/);
    expect(readFileSync(folder.at('yard.fitted.yaml'), 'utf8')).toBe(FITTED);
    // as `fit --save` does
    claimInput(folder.at('yard.fitted.yaml'), FITTED_FILE);
    await openSink(folder.at('yard.fitted.yaml'), FITTED_FILE).write('renewed\n');
    expect(readFileSync(folder.at('yard.fitted.yaml'), 'utf8')).toBe('renewed\n');
  });
});

describe('an output that no file can be', () => {
  it.each([['a file for a folder', 'pit.yaml/x', /a file stands where a folder is needed/]])(
    '%s: exit 2 before the work',
    (_, name, message) => expectNoName(folder, name, message),
  );
});

describe('an output on a full disk', () => {
  it.each(['> x.json'])('%s: exit 2, nothing of it stays', (output) => expectNothingStays(folder, output, 'page'));
});
