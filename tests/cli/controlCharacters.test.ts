import { describe, expect, it } from 'vitest';
import { toJson, toJsonLine } from '../../src/report/json.js';
import { expectHarmless, FILE, NAME, OBEYED, shown, useHostileFolder } from './hostileNames.js';

const { run } = useHostileFolder();

describe('control characters never reach a terminal', () => {
  it.each([
    [0, 'check', '-'],
    [3, 'fit', '-', `${FILE}/${FILE}.csv`],
    [2, 'check', '-', '-o', FILE],
  ] as [number, ...string[]][])('exit %i: %s', async (code, ...args) => expectHarmless(await run(...args), code));

  it('a name stays on its line, whatever it holds', async () => {
    const { stderr } = await run('check', `${FILE}/none.json`);
    expect(stderr).toMatch(/^pitwright: Pit\\u001b\[2J.*: no such file\.\n$/);
    expect((await run('check', '-')).stdout).toMatch(/^Pit \[2J end: the design can be read and built\n/);
  });
});

describe('JSON says them as JSON does', () => {
  it.each([['check']])('%s --json: none as it is, the name whole', async (command) => {
    const ran = await run(command, '-', '--json');
    expect({ code: ran.code, shown: shown(ran) }).toEqual({ code: 0, shown: 'nothing' });
    expect(JSON.parse(ran.stdout).design.name).toBe(NAME);
  });

  it('keys and values, of either form', () => {
    const value = { [NAME]: [NAME, { deep: NAME }] };
    for (const text of [toJson(value), toJsonLine(value)]) {
      expect(OBEYED.test(text)).toBe(false);
      expect(JSON.parse(text)).toEqual(value);
    }
  });
});
