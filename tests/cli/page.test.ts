import { readFileSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import { afterAll, describe, expect, it, vi } from 'vitest';
import { Stop } from '../../src/cli/exit.js';
import { showPage } from '../../src/cli/showPage.js';
import { example, pitwright, scratch } from './support/run.js';

const folder = scratch();
afterAll(() => folder.remove());

describe('pitwright page', () => {
  it('writes the same file every time, and says nothing', async () => {
    const runs = await Promise.all(['a.html', 'b.html'].map((name) => pitwright(['page', '-o', folder.at(name)])));
    for (const run of runs) expect(run).toMatchObject({ code: 0, stdout: '', stderr: '' });
    const [a, b] = ['a.html', 'b.html'].map((name) => readFileSync(folder.at(name), 'utf8'));
    expect(a).toBe(b);
    expect(a).toMatch(/^<!doctype html>/);
    expect((await pitwright(['page'])).stdout).toBe(a);
  });

  it('puts a design in so that no text of it can end its place', async () => {
    const text = readFileSync(example('plain-24.yaml'), 'utf8').replace('# The shop', '# </script><b>$& The shop');
    writeFileSync(folder.at('sly.yaml'), text);
    const { code, stdout } = await pitwright(['page', folder.at('sly.yaml')]);
    expect(code).toBe(0);
    const json = /<script type="application\/json" id="design">(.*?)<\/script>/s.exec(stdout)![1];
    expect(JSON.parse(json)).toBe(text);
  });

  it('refuses a design with faults, each with its line, and writes nothing', async () => {
    writeFileSync(folder.at('bad.yaml'), 'schema: 1\nname: Bad\nfirebox: { plate: 0.25 }\n');
    const { code, stdout, stderr } = await pitwright(['page', folder.at('bad.yaml'), '-o', folder.at('bad.html')]);
    expect(code).toBe(3);
    expect(stdout).toBe('');
    expect(stderr).toMatch(/bad\.yaml:3:\d+: firebox\.plate: '0\.25' has no unit/);
    expect(() => readFileSync(folder.at('bad.html'))).toThrow();
  });

  it('refuses to write the page over its design', async () => {
    const { code, stderr } = await pitwright(['page', folder.at('sly.yaml'), '-o', folder.at('sly.yaml')]);
    expect(code).toBe(2);
    expect(stderr).toContain('would overwrite the design');
  });
});

/** Asks a server on this machine for a path, under a host name. */
function ask(address: string, { path = '/', host }: { path?: string; host?: string } = {}) {
  return new Promise<{ status: number; body: string }>((done, fail) => {
    const asked = request(new URL(path, address), { agent: false, headers: host ? { host } : {} }, (response) => {
      let body = '';
      response.setEncoding('utf8');
      response.on('data', (chunk: string) => (body += chunk));
      response.on('end', () => done({ status: response.statusCode!, body }));
    });
    asked.on('error', fail);
    asked.end();
  });
}

describe('the server of page --open', () => {
  const quiet = () => vi.spyOn(process.stderr, 'write').mockReturnValue(true);

  it('hands the page out on this machine alone, and ends by itself', async () => {
    const told = quiet();
    let address = '';
    const seen: { status: number; body: string }[] = [];
    const browse = async (given: string) => {
      address = given;
      seen.push(await ask(given), await ask(given, { path: '/other' }), await ask(given, { host: 'evil.example' }));
      return true;
    };
    await showPage('<!doctype html>page', { browse, reloads: 1000 });
    expect(told.mock.calls.flat().join('')).toContain(address);
    told.mockRestore();
    expect(address).toMatch(/^http:\/\/127\.0\.0\.1:\d+\/$/);
    expect(seen.map(({ status }) => status)).toEqual([200, 404, 404]);
    expect(seen[0].body).toBe('<!doctype html>page');
    await expect(ask(address)).rejects.toThrow('ECONNREFUSED');
  });

  it('ends, and says so, when nobody comes', async () => {
    const told = quiet();
    const ended = showPage('page', { browse: () => Promise.resolve(false), nobodyCame: 50 });
    await expect(ended).rejects.toThrow(Stop);
    expect(told.mock.calls.flat().join('')).toContain('no browser could be started; open that address in one');
    told.mockRestore();
  });
});
