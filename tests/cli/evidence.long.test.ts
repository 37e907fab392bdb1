import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { row, useCaseFiles } from './caseFiles.js';
import { pitwright } from './support/run.js';

const { folder, cases } = useCaseFiles();

describe('evidence', () => {
  it('is the whole report with exit 0, the same bytes as in the repository but for its pictures', async () => {
    const { code, stdout } = await pitwright(['evidence']);
    expect(code).toBe(0);
    const kept = readFileSync('reference/REPORT.md', 'utf8').replace(/!\[.*\n\n/g, '');
    expect(stdout).toBe(kept);
  });

  it('writes JSON into a file and pictures into a folder on request', async () => {
    const [file, charts] = [folder.at('evidence.json'), folder.at('charts')];
    const { code, stdout } = await pitwright(['evidence', '--json', '-o', file, '--charts', charts]);
    expect({ code, stdout }).toEqual({ code: 0, stdout: '' });
    expect(Object.keys(JSON.parse(readFileSync(file, 'utf8')))).toEqual(
      expect.arrayContaining(['verification', 'validation', 'passed']),
    );
    expect(readdirSync(charts).sort()).toEqual(
      ['flows.png', 'neutral-plane.png', 'steel-room.png', 'temperature-rises.png'].sort(),
    );
  });

  it.each([
    ['a file that is not there', () => folder.at('none.csv'), 3, /no such file/],
    ['a folder', () => resolve('reference'), 3, /this is a folder\. Give a case file, such as .*cases-air\.csv/],
    [
      'an empty file',
      () => (writeFileSync(folder.at('empty.csv'), ''), folder.at('empty.csv')),
      3,
      /empty\.csv:1: +is empty/,
    ],
  ])('%s ends the run with a plain message', async (_, file, exit, message) => {
    const { code, stdout, stderr } = await pitwright(['evidence', '--cases', file()]);
    expect({ code, stdout }).toEqual({ code: exit, stdout: '' });
    expect(stderr).toMatch(message);
    expect(stderr).not.toMatch(/at .*\.js/);
  });

  it('does not write over the cases it reads', async () => {
    const file = cases('own.csv', row('a', 1.176));
    const { code, stderr } = await pitwright(['evidence', '--cases', file, '-o', file]);
    expect(code).toBe(2);
    expect(stderr).toMatch(/would overwrite the case file itself/);
  });

  it('ends with 1 when a row of theirs misses, its row shown', async () => {
    const { code, stdout, stderr } = await pitwright([
      'evidence',
      '--renew',
      '--cases',
      cases('bad.csv', row('a', 1.176), row('b', 1.5)),
    ]);
    expect(code).toBe(1);
    expect(stdout).toMatch(/b miss: expected 1\.5 kg\/m3, computed 1\.17/);
    expect(stderr).toBe('pitwright: 1 of 2 cases missed.\n');
  });
});
