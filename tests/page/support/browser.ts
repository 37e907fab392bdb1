import { spawnSync } from 'node:child_process';
import {
  createReadStream,
  createWriteStream,
  existsSync,
  mkdirSync,
  mkdtempSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join, resolve } from 'node:path';
import { pipeline } from 'node:stream/promises';
import { createBrotliDecompress } from 'node:zlib';
import { chromium, type Browser } from 'playwright-core';

/** Where a browser of the machine usually is, for machines that the packaged one doesn't run on. */
const USUAL = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
];

interface Candidate {
  executablePath: string;
  env?: Record<string, string>;
}

let launched: Promise<Browser | null> | undefined;

/** The browser of this worker, started for the first file of tests that asks; it goes when the worker does. */
export const launchBrowser = () => (launched ??= launch());

/**
 * A real browser: the one that PITWRIGHT_CHROMIUM names, else the one that comes as a package with its own libraries,
 * else one of the machine. Null, said loudly, when none starts; under CI that is an error, since tests that nobody ran
 * prove nothing.
 */
async function launch(): Promise<Browser | null> {
  const reasons: string[] = [];
  for (const candidate of candidates()) {
    try {
      const { executablePath, env } = await candidate();
      return await chromium.launch({
        executablePath,
        ...(env ? { env: { ...(process.env as Record<string, string>), ...env } } : {}),
      });
    } catch (error) {
      reasons.push((error as Error).message.split('\n')[0]);
    }
  }
  const told = `NO BROWSER could be started, so the page was NOT tested:\n  ${reasons.join('\n  ')}`;
  if (process.env.CI) throw new Error(told);
  process.stderr.write(`\n${'!'.repeat(70)}\n${told}\n${'!'.repeat(70)}\n\n`);
  return null;
}

function candidates(): (() => Promise<Candidate>)[] {
  const named = process.env.PITWRIGHT_CHROMIUM;
  if (named) return [async () => ({ executablePath: named })];
  return [
    packagedBrowser,
    ...USUAL.filter((path) => existsSync(path)).map((path) => async () => ({ executablePath: path })),
  ];
}

/** The packaged browser, unpacked once into the ignored folder for all runs to come. */
async function packagedBrowser(): Promise<Candidate> {
  if (process.platform !== 'linux' || process.arch !== 'x64')
    throw new Error('the packaged browser is for Linux on x64');
  const root = packageRoot('@sparticuz/chromium');
  const { version } = createRequire(import.meta.url)(join(root, 'package.json')) as { version: string };
  const folder = resolve('out', `browser-${version}`);
  if (!existsSync(folder)) {
    mkdirSync('out', { recursive: true });
    const fresh = mkdtempSync(resolve('out', 'browser-'));
    await unpack(join(root, 'bin/chromium.br'), join(fresh, 'chromium'), 0o755);
    for (const archive of ['al2023', 'fonts', 'swiftshader']) {
      const tar = join(fresh, `${archive}.tar`);
      await unpack(join(root, `bin/${archive}.tar.br`), tar, 0o644);
      const { status, stderr } = spawnSync('tar', ['-xf', tar, '-C', fresh], { encoding: 'utf8' });
      if (status !== 0) throw new Error(`tar could not unpack ${archive}: ${stderr}`);
      rmSync(tar);
    }
    writeFileSync(join(fresh, 'fonts.conf'), fontSettings(folder));
    try {
      renameSync(fresh, folder);
    } catch {
      // another run was quicker
      rmSync(fresh, { recursive: true, force: true });
    }
  }
  return {
    executablePath: join(folder, 'chromium'),
    // libraries that a bare machine lacks come with the package; the machine's own are left alone
    env: { LD_LIBRARY_PATH: join(folder, 'lib'), FONTCONFIG_FILE: join(folder, 'fonts.conf') },
  };
}

/** The package's own settings name folders of another machine. */
function fontSettings(folder: string): string {
  const [fonts, cache] = ['fonts', 'font-cache'].map((name) => join(folder, name));
  return (
    '<?xml version="1.0"?>\n<!DOCTYPE fontconfig SYSTEM "fonts.dtd">\n<fontconfig>\n' +
    `<dir>${fonts}</dir>\n<dir>/usr/share/fonts</dir>\n<cachedir>${cache}</cachedir>\n</fontconfig>\n`
  );
}

function packageRoot(name: string): string {
  const entry = createRequire(import.meta.url).resolve(name);
  return entry.slice(0, entry.lastIndexOf(join('node_modules', name)) + join('node_modules', name).length);
}

async function unpack(from: string, to: string, mode: number): Promise<void> {
  mkdirSync(dirname(to), { recursive: true });
  await pipeline(createReadStream(from), createBrotliDecompress(), createWriteStream(to, { mode }));
}
