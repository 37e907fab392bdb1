import { beforeAll, describe, expect, it } from 'vitest';
import { drawn, mixedLines, ndjson, plain, read } from './batchLines.js';
import { expectRefusal, pitwright, type Run } from './support/run.js';

/** The mixed lines as they are computed in one go. That a line has an estimate's numbers stands with the estimate. */
let whole: Run;
beforeAll(async () => {
  whole = await pitwright(['batch', '--steady', '--workers', '1'], { stdin: mixedLines(4) });
});

describe('batch: designs in, results out', () => {
  const steady = (stdin: string | Buffer, ...more: string[]) => pitwright(['batch', '--steady', ...more], { stdin });

  it('gives lines in the order of their designs', () => {
    const names = read(whole.stdout).flatMap(({ name, error }) => (error ? [] : [name]));
    expect(names).toEqual(Array.from({ length: 4 }, (_, i) => `pit ${i + 1}`));
  });

  it('has an error line for each line that holds no design, and goes on', async () => {
    const lines = read(whole.stdout);
    expect(lines[2].error).toEqual({ code: 'empty-line', message: 'the line is empty', faults: [] });
    expect(lines[4].error.code).toBe('not-json');
    expect(lines[4].error.message).toMatch(/^the line can't be read as JSON, .*; allowed: one design a line$/);
    const misspelt = lines.at(-1)!;
    expect(misspelt).toMatchObject({ schema: 1, tool: { name: 'pitwright' }, name: 'misspelt' });
    expect(misspelt.error.code).toBe('wrong-design');
    expect(misspelt.error.faults).toEqual([
      expect.objectContaining({ code: 'unknown-key', path: 'chamber.plaet', nearest: 'plate' }),
    ]);
    expect(misspelt.error.message).toMatch(/^one fault in the design: chamber\.plaet: is no field here; .*'plate'\?$/);
    expect(lines.filter(({ error }) => !error).every(({ assumed }) => assumed.converged)).toBe(true);
  });

  it.each([['a number', '42', /is a plain number/]])('says what is wrong with %s', async (_, line, message) => {
    const { code, stdout, stderr } = await steady(`${line}\n`);
    expect(code).toBe(3);
    expect(stderr).toMatch(/; one line is an error line and says what is wrong\n$/);
    const [{ error }] = read(stdout);
    expect(error.message).toMatch(message);
    expect(stdout).not.toMatch(/NaN|undefined|\bat .*\.js/);
  });

  it('lets a line go that is far too long, and one that is no text', async () => {
    const good = Buffer.from(ndjson([drawn]));
    const long = Buffer.from(`{"name":"${'x'.repeat(3_000_000)}"}\n`);
    const lines = read((await steady(Buffer.concat([long, good, Buffer.from([0xff, 0xfe, 0x0a]), good]))).stdout);
    expect(lines.map(({ error }) => error?.code)).toEqual(['too-long', undefined, 'not-text', undefined]);
    expect(lines[0].error.message).toMatch(/allowed: up to 250 kB/);
  });
});

describe('batch --changes', () => {
  const changed = (table: string, ...more: string[]) =>
    pitwright(['batch', '--changes', plain, '--steady', ...more], { stdin: table });

  it('has an error line for a row that can make no design', async () => {
    const { code, stdout } = await changed(
      'name,all.plate,stacks[2].height\r\nvalue,thick,\r\nindex,,30 in\r\ncells,1/8 in\r\n\r\nquotes,"1/8 in,\r\nright,1/8 in,\r\n',
    );
    expect(code).toBe(3);
    const lines = read(stdout);
    expect(lines.map(({ error }) => error?.code)).toEqual([
      ...['wrong-design', 'wrong-design', 'wrong-columns', 'empty-line', 'not-csv', undefined],
    ]);
    expect(lines[0]).toMatchObject({ name: 'value', changes: { 'all.plate': 'thick' } });
    expect(lines[0].error.faults[0]).toMatchObject({ path: 'firebox.plate', value: 'thick' });
    expect(lines[1].error.faults[0]).toMatchObject({ path: 'stacks[2].height', value: '30 in' });
    expect(lines[1].error.message).toMatch(/there is no stacks\[2\]: the list has 1/);
    expect(lines[2].error.message).toMatch(/2 cells where the head has 3; a value with a comma in it/);
  });

  it.each([['chamber.plaet', /'chamber\.plaet' is no field; allowed: .*; did you mean 'chamber\.plate'\?/]])(
    'refuses the head %s before it starts',
    async (head, message) => {
      const { code, stdout, stderr } = await changed(`${head}\n1,2\n`);
      expect({ code, stdout }).toEqual({ code: 3, stdout: '' });
      expect(stderr).toMatch(message);
      expect(stderr).toMatch(/^pitwright: standard input: .*\n$/);
    },
  );
});

describe('batch: where results go', () => {
  it.each([['--from', '0']])('%s %s: exit 2 and what is allowed', async (option, value) => {
    await expectRefusal(['batch', option, value], 2, /whole number from \d+ to \d+/);
  });
});
