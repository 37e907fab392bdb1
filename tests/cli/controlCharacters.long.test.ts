import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { expectHarmless, FILE, file, NAME, OBEYED, shown, useHostileFolder } from './hostileNames.js';
import { pitwright } from './support/run.js';

/** What XML 1.0 has no place for (section 2.2). */
const NOT_XML = /[^\t\n\r\u0020-\uD7FF\uE000-\uFFFD\u{10000}-\u{10FFFF}]/u;
/** The same as a value on the command line, in double quotes. */
const QUOTED = `"${[...NAME].map((each) => `\\u${each.charCodeAt(0).toString(16).padStart(4, '0')}`).join('')}"`;

const { run, folder } = useHostileFolder();

describe('control characters never reach a terminal', () => {
  it.each([
    [0, 'batch', '--steady'],
    [3, 'check', `${FILE}/broken.yaml`],
    [2, 'no-such-command', FILE],
    [0, 'estimate', '-', '--csv', '-'],
    [0, 'estimate', '-', '--spread', '20'],
    [0, 'compare', '-', file, '--vary', `name=${QUOTED} | b`],
    [0, 'compare', '-', file, '--csv', '-'],
    [0, 'cook', '-'],
    [0, 'cook', '-', '--csv', '-'],
    [0, 'cold-smoke', '-'],
    [0, 'report', '-', '--spread', '20'],
    [0, 'page', file],
    [0, 'estimate', file, '--charts', `${FILE}/charts`, '--format', 'svg'],
    [3, 'check', FILE],
    [3, 'check', `${FILE}/none.json`],
    [3, 'evidence', '--cases', `${FILE}/${FILE}.csv`],
    [2, 'check', '-', '-o', `${FILE}/none/x`],
    [2, 'check', file, '-o', file],
    [2, 'estimate', '-', '--csv', FILE, '-o', FILE],
    [2, 'check', '-', `--${FILE}`],
    [2, 'check', '-', '--units', FILE],
    [2, 'fit', '-', 'x.csv', '--hold-back', FILE],
    [2, 'compare', '-', '--vary', FILE],
    [2, 'compare', '-', '--price', FILE],
    [2, 'cold-smoke', '-', '--air', FILE],
  ] as [number, ...string[]][])('exit %i: %s', async (code, ...args) => expectHarmless(await run(...args), code));

  it('the line ends of CSV stay as they are', async () => {
    const { stdout } = await run('estimate', '-', '--csv', '-');
    expect(stdout).toMatch(/^time \[min\],.*\r\n[\d.]+,/);
    expect(stdout).not.toContain('\\u000d');
  });

  it('an unknown command', async () => {
    const ran = await run(FILE);
    expect({ code: ran.code, shown: shown(ran) }).toEqual({ code: 2, shown: 'nothing' });
    expect(ran.stderr).toMatch(/^pitwright: unknown command 'Pit\\u001b/);
  });

  it('what a table of changes and a line of a batch hold', async () => {
    for (const stdin of [
      `{"name":"\u001b[2J"}\n`,
      `\u009b2J\u202e\n`,
      `${JSON.stringify({ name: NAME, gauge: NAME })}\n`,
    ]) {
      const ran = await pitwright(['batch', '--steady'], { stdin });
      expect({ code: ran.code, shown: shown(ran) }).toEqual({ code: 3, shown: 'nothing' });
    }
    for (const stdin of [
      `name,${FILE.replace(/[\n\r",]/g, '')}\n1,2\n`,
      `name,gauge\n\u009b\u202e\u001b,\u009b\u001b\n`,
    ]) {
      const ran = await pitwright(['batch', '--steady', '--changes', file], { stdin, cwd: folder.path });
      expect({ code: ran.code, shown: shown(ran) }).toEqual({ code: 3, shown: 'nothing' });
    }
  });
});

describe('JSON says them as JSON does', () => {
  it.each([['estimate'], ['cook'], ['cold-smoke']])('%s --json: none as it is, the name whole', async (command) => {
    const ran = await run(command, '-', '--json');
    expect({ code: ran.code, shown: shown(ran) }).toEqual({ code: 0, shown: 'nothing' });
    expect(JSON.parse(ran.stdout).design.name).toBe(NAME);
  });

  it('one line of a batch', async () => {
    const { stdout } = await run('batch', '--steady');
    expect(OBEYED.test(stdout)).toBe(false);
    expect(JSON.parse(stdout).name).toBe(NAME);
  });
});

describe('files for other programs', () => {
  it('SVG and HTML hold what XML has a place for alone', async () => {
    await run('estimate', '-', '--charts', 'svg', '--format', 'svg', '-o', 'estimate.txt');
    await run('report', '-', '--vary', `name=${QUOTED} | b`, '--spread', '20', '-o', 'sheet.html');
    const svg = readdirSync(folder.at('svg'));
    expect(svg).toHaveLength(6);
    for (const path of [...svg.map((name) => `svg/${name}`), 'sheet.html', 'estimate.txt']) {
      const text = readFileSync(folder.at(path), 'utf8');
      expect(text, path).toContain('Pit');
      expect({ path, bad: NOT_XML.exec(text)?.[0], obeyed: OBEYED.exec(text)?.[0] }).toEqual({ path });
    }
  });

  it('a PDF is written', async () => {
    expect((await run('report', '-', '--spread', '20', '-o', 'sheet.pdf')).code).toBe(0);
    const pdf = readFileSync(folder.at('sheet.pdf'), 'latin1');
    expect(pdf).toMatch(/^%PDF-/);
    expect(pdf).toMatch(/%%EOF\s*$/);
  });
});
