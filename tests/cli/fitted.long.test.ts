import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { FITTED } from '../design/fittedFiles.js';
import { eachFittedPit, flat, plain, RESTS } from './fittedPit.js';
import { example, pitwright } from './support/run.js';

const folder = eachFittedPit();

describe('a design that names a fitted file', () => {
  it.each([
    ['estimate', []],
    ['check', []],
    ['refine', []],
    ['compare', []],
    ['cold-smoke', []],
  ])('%s says what it rests on', async (command, more) => {
    const { stdout } = await pitwright([command, folder.at('pit.yaml'), ...more]);
    expect(flat(stdout)).toContain(RESTS);
  });

  it('a cook says it too, and refine in its JSON', async () => {
    writeFileSync(folder.at('day.yaml'), `${plain}fitted: yard.fitted.yaml\ncook: { tend: 1 h }\n`);
    expect(flat((await pitwright(['cook', folder.at('day.yaml')])).stdout)).toContain(RESTS);
    const { stdout } = await pitwright(['refine', folder.at('pit.yaml'), '--json']);
    expect(JSON.parse(stdout).fitted.logs[0].name).toBe('yard-cook.csv');
  });

  it('a size says it, and judges candidates with it', async () => {
    const { code, stdout } = await pitwright(['size', folder.at('pit.yaml')]);
    expect(flat(stdout)).toContain(RESTS);
    expect(code).toBe(0);
    const without = await pitwright(['size', example('plain-24.yaml')]);
    const limits = (text: string) => /^LIMITS[^]*?\n\n/m.exec(text)![0];
    expect(limits(stdout)).not.toBe(limits(without.stdout));
  });

  it('compare with and without it', async () => {
    const args = ['compare', folder.at('pit.yaml'), '--vary', 'fitted=none | yard.fitted.yaml', '--json'];
    const { code, stdout } = await pitwright(args);
    expect(code).toBe(0);
    const [without, using] = JSON.parse(stdout).options;
    expect(without.result.design.fitted).toBeUndefined();
    expect(without.result.design.innerConvection).toBe(1);
    expect(using.result.design.innerConvection).toBe(1.31);
    const text = flat((await pitwright(args.slice(0, -1))).stdout);
    expect(text).toContain('no fitted: Rests on no measured cook');
    expect(text).toContain(`yard.fitted.yaml: ${RESTS}`);
  });

  it('a report shows it to the buyer and in the shop’s sheets', async () => {
    const { code } = await pitwright(['report', folder.at('pit.yaml'), '-o', folder.at('r.html'), '--spread', '20']);
    expect(code).toBe(0);
    const html = readFileSync(folder.at('r.html'), 'utf8').replaceAll('&nbsp;', ' ').replaceAll('&#39;', "'");
    expect(html.includes('Rests on a measured cook: yard-cook.csv (4 h 12 min on')).toBe(true);
    expect(html.includes(`** fitted to a measured cook. ${RESTS}`)).toBe(true);
    expect(html.includes('1.31 **')).toBe(true);
  });

  it('the page gets the block itself', async () => {
    const { code, stdout } = await pitwright(['page', folder.at('pit.yaml')]);
    expect(code).toBe(0);
    const design = JSON.parse(/id="design">(".*?")<\/script>/s.exec(stdout)![1]);
    expect(design).not.toContain('yard.fitted.yaml');
    writeFileSync(folder.at('own.yaml'), design);
    const own = await pitwright(['check', folder.at('own.yaml'), '--json']);
    const named = await pitwright(['check', folder.at('pit.yaml'), '--json']);
    expect(JSON.parse(own.stdout)).toEqual(JSON.parse(named.stdout));
  });

  it('its spread says how fitted estimates were drawn, the same on any number of threads', async () => {
    const spread = (workers: string) =>
      pitwright(['estimate', folder.at('pit.yaml'), '--spread', '60', '--workers', workers, '--json']);
    const [one, two] = await Promise.all([spread('1'), spread('2')]);
    expect(one.stdout).toBe(two.stdout);
    const { spread: told } = JSON.parse(one.stdout);
    expect(told.method).toMatch(/Iman & Conover 1982/);
  });

  it('finds it beside itself, from any folder', async () => {
    mkdirSync(folder.at('elsewhere'));
    const { code, stdout } = await pitwright(['estimate', '../pit.yaml', '--json'], { cwd: folder.at('elsewhere') });
    expect(code).toBe(0);
    const { design, estimates } = JSON.parse(stdout);
    expect(design.innerConvection).toBe(1.31);
    expect(design.fitted.logs[0]).toMatchObject({ name: 'yard-cook.csv', fitted_s: 15120 });
    expect(estimates.find(({ path }: { path: string }) => path === 'innerConvection').source).toBe(
      'fitted to yard-cook.csv',
    );
  });
});

describe('a fitted file that is wrong', () => {
  const check = async (name: string) => {
    writeFileSync(folder.at('wrong.yaml'), `${plain}fitted: ${name}\n`);
    return pitwright(['check', 'wrong.yaml'], { cwd: folder.path });
  };

  it('missing in another folder: names the nearest there', async () => {
    mkdirSync(folder.at('fits'));
    writeFileSync(folder.at('fits/yard.yaml'), FITTED);
    expect((await check('fits/yard.yaml')).code).toBe(0);
    expect((await check('fits/yrd.yaml')).stderr).toMatch(/did you mean 'fits\/yard\.yaml'\?/);
  });

  it.each([
    ['no text', 'binary.yaml', /names a file that is no UTF-8 text/],
    ['another design', 'pit.yaml', /pit\.yaml:\d+:\d+: fitted: 'yard\.fitted\.yaml' names another file/],
  ])('%s', async (_, name, told) => {
    mkdirSync(folder.at('folder'));
    writeFileSync(folder.at('binary.yaml'), Buffer.from([0xff, 0x80, 0x00]));
    writeFileSync(folder.at('large.yaml'), '#'.repeat(250_001));
    const { code, stderr } = await check(name);
    expect(code).toBe(3);
    expect(stderr).toMatch(told);
    expect(stderr).not.toMatch(/ at .*\.js/);
  });
});
