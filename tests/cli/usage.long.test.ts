import { describe, expect, it } from 'vitest';
import { pitwright } from './support/run.js';

describe('wrong usage ends with 2, on stderr alone', () => {
  it.each([
    ['an unknown option', ['check', 'x.yaml', '--jsn'], /unknown option '--jsn'\n.*Did you mean --json\?/],
    ['units that do not exist', ['estimate', 'x.yaml', '--units', 'metric'], /Allowed choices are shop, si/],
    ['no design', ['estimate'], /missing required argument 'design'/],
    ['two designs', ['check', 'a.yaml', 'b.yaml'], /too many arguments/],
    ['an option without its value', ['estimate', 'x.yaml', '-o'], /argument missing/],
    ['no command', [], /Usage: pitwright/],
  ])('%s', async (_, args, message) => {
    const { code, stdout, stderr } = await pitwright(args);
    expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
    expect(stderr).toMatch(message);
    expect(stderr).not.toMatch(/^ +at /m);
  });
});

describe('what was asked for goes to stdout and ends with 0', () => {
  it.each([['--help'], ['help'], ['help', 'estimate']])('%s %s', async (...args) => {
    const { code, stdout, stderr } = await pitwright(args);
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
    expect(stdout).toContain('Usage: pitwright');
  });
});
