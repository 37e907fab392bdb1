import { spawnSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { eachScratch, pitwright, type Run } from './support/run.js';

const folder = eachScratch();

const scripts = new Map<string, Promise<Run>>();
async function script(shell: string): Promise<string> {
  if (!scripts.has(shell)) scripts.set(shell, pitwright(['completion', shell]));
  return (await scripts.get(shell)!).stdout;
}

/** What bash offers for the last of some words. */
function offered(source: string, words: string[]): string[] {
  const set = `COMP_WORDS=(${words.map((word) => `'${word}'`).join(' ')}); COMP_CWORD=${words.length - 1}`;
  // compopt works only while bash itself completes
  const asked = `compopt() { :; }; ${source}\n${set}; _pitwright; printf '%s\\n' "\${COMPREPLY[@]}"`;
  const { stdout, stderr } = spawnSync('bash', ['-c', asked], { encoding: 'utf8' });
  expect(stderr).toBe('');
  return stdout.split('\n').filter((line) => line !== '');
}

describe('completion', () => {
  it('offers the commands that the help lists', async () => {
    const { stdout } = await pitwright(['--help']);
    const listed = [...stdout.matchAll(/^ {2}([a-z-]+) (?=.*\S)/gm)]
      .map(([, name]) => name)
      .filter((name) => name !== 'help');
    const bash = await script('bash');
    expect(listed).toContain('completion');
    expect(offered(bash, ['pitwright', '']).sort()).toEqual([...listed, '--help', '--version'].sort());
    const others = [await script('zsh'), await script('fish')];
    for (const name of listed) for (const text of others) expect(text).toMatch(new RegExp(`\\b${name}\\b`));
  });

  it('offers options of a command, what may stand behind them, and fields after --vary', async () => {
    const bash = await script('bash');
    expect(offered(bash, ['pitwright', 'report', '--pa'])).toEqual(['--paper']);
    expect(offered(bash, ['pitwright', 'estimate', '--fu'])).toEqual(['--full']);
    expect(offered(bash, ['pitwright', 'report', '--paper', ''])).toEqual(['letter', 'a4']);
    expect(offered(bash, ['pitwright', 'report', 'pit.yaml', '--format', 'p'])).toEqual(['pdf']);
    expect(offered(bash, ['pitwright', 'evidence', '--re'])).toEqual([]);
    expect(offered(bash, ['pitwright', 'compare', 'pit.yaml', '--vary', 'firebox.pl'])).toEqual(['firebox.plate=']);
    expect(offered(bash, ['pitwright', 'compare', 'pit.yaml', '--vary', 'chamber.ins'])).toContain(
      'chamber.insulation=',
    );
    expect(offered(bash, ['pitwright', 'compare', 'pit.yaml', '--vary', 'stacks[0].d'])).toContain(
      'stacks[0].diameter=',
    );
    expect(offered(bash, ['pitwright', 'compare', 'pit.yaml', '--vary', 'prices.'])).toContain('prices.wood=');
    expect(offered(bash, ['pitwright', 'compare', 'pit.yaml', '--vary', 'options'])).toEqual([]);
    // several at once, commas between
    expect(offered(bash, ['pitwright', 'compare', 'pit.yaml', '--vary', 'chamber.plate,upright.pl'])).toEqual([
      'chamber.plate,upright.plate=',
    ]);
    expect(offered(bash, ['pitwright', 'new', '--with', 'handles,tr'])).toEqual(['handles,trailer']);
    expect(offered(bash, ['pitwright', 'completion', ''])).toEqual(['bash', 'zsh', 'fish']);
  });

  it.each(['bash', 'zsh', 'fish'])('is a script that %s reads, where there is one', async (shell) => {
    writeFileSync(folder.at('script'), await script(shell));
    const { error, status, stderr } = spawnSync(shell, ['-n', folder.at('script')], { encoding: 'utf8' });
    if (error) expect(shell).not.toBe('bash');
    else expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
  });

  it('refuses another shell', async () => {
    const { code, stdout, stderr } = await pitwright(['completion', 'csh']);
    expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
    expect(stderr).toContain('bash, zsh, fish');
  });
});
