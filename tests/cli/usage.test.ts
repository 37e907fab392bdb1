import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { version } from '../../src/version.js';
import { example, pitwright } from './support/run.js';

describe('wrong usage ends with 2, on stderr alone', () => {
  it.each([['an unknown command', ['estimat', 'x.yaml'], /unknown command 'estimat'.*\n?.*Did you mean estimate\?/]])(
    '%s',
    async (_, args, message) => {
      const { code, stdout, stderr } = await pitwright(args);
      expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
      expect(stderr).toMatch(message);
      expect(stderr).not.toMatch(/^ +at /m);
    },
  );
});

describe('what was asked for goes to stdout and ends with 0', () => {
  it('--version, the one of the package', async () => {
    expect(version).toBe(JSON.parse(readFileSync('package.json', 'utf8')).version);
    expect(await pitwright(['--version'])).toMatchObject({ code: 0, stdout: `${version}\n`, stderr: '' });
  });

  it.each([['estimate', '--help']])('%s %s', async (...args) => {
    const { code, stdout, stderr } = await pitwright(args);
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
    expect(stdout).toContain('Usage: pitwright');
  });
});

describe('a reader that hangs up', () => {
  it('is no error', async () => {
    const { code, stderr } = await pitwright(['check', example('plain-24.yaml'), '--json'], { hangUp: true });
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
  });
});

describe('an output that cannot take it', () => {
  it.runIf(existsSync('/dev/full'))('says that the disk is full', async () => {
    const { code, stdout, stderr } = await pitwright(['new', '-o', '/dev/full']);
    expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
    expect(stderr).toBe('pitwright: /dev/full: the disk is full.\n');
  });
});

describe('our own fault', () => {
  // breaks the mathematics under the command's feet
  const broken = { NODE_OPTIONS: `--import data:text/javascript,Math.exp=()=>{throw(new(Error)('boom'))}` };
  const args = ['estimate', example('plain-24.yaml')];

  it('is one line that says so and how to report it, and ends with 1', async () => {
    const { code, stdout, stderr } = await pitwright(args, { env: broken });
    expect({ code, stdout }).toEqual({ code: 1, stdout: '' });
    expect(stderr).toMatch(/^pitwright: our fault, not yours: boom\. Please report it with .*\n$/);
  });

  it('shows the stack only when asked', async () => {
    const { code, stderr } = await pitwright(args, { env: { ...broken, PITWRIGHT_DEBUG: '1' } });
    expect(code).toBe(1);
    expect(stderr).toMatch(/^ +at /m);
  });
});
