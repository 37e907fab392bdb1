import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { FITTED } from '../design/fittedFiles.js';
import {
  designs,
  drawn,
  expectAsEstimated,
  linesOf,
  mixedLines,
  ndjson,
  plain,
  read,
  type Tree,
} from './batchLines.js';
import { canRunParallel, inParallel } from './support/parallel.js';
import { expectRefusal, pitwright, scratch, type Run } from './support/run.js';

const mixed = mixedLines(13);
/** The mixed lines as they are computed in one go. */
let whole: Run;

const MIXED = 16;

describe('batch: designs in, results out', () => {
  const steady = (stdin: string | Buffer, ...more: string[]) => pitwright(['batch', '--steady', ...more], { stdin });

  it.each([
    ['nothing', 'null', /holds no design/],
    ['a list', '[1, 2]', /is a list/],
    ['YAML', '{schema: 1}', /can't be read as JSON, from character 2 on/],
    ['a key twice', JSON.stringify(drawn).replace('{', '{"name":"A",'), /name: is written twice/],
    ['a deep nest', `${'['.repeat(5000)}${']'.repeat(5000)}`, /nested too deeply/],
    ['control characters', '\u0000\u0001', /can't be read as JSON/],
  ])('says what is wrong with %s', async (_, line, message) => {
    const { code, stdout, stderr } = await steady(`${line}\n`);
    expect(code).toBe(3);
    expect(stderr).toMatch(/; one line is an error line and says what is wrong\n$/);
    const [{ error }] = read(stdout);
    expect(error.message).toMatch(message);
    expect(stdout).not.toMatch(/NaN|undefined|\bat .*\.js/);
  });

  it('gives the numbers of estimate --json, of any layout', async () => {
    const { stdout, stderr } = await pitwright(['batch'], { stdin: ndjson(designs) });
    expect(stderr).toMatch(/^pitwright: 3 lines in [\d.]+ s, [\d.]+ a second\n$/);
    const results = read(stdout);
    expect(results.map(({ name }) => name)).toEqual(designs.map(({ name }) => name));
    for (const [i, design] of designs.entries()) await expectAsEstimated(design, results[i]);
  });

  it('gives the same bytes with one thread, two and five', async () => {
    const [one, two, five] = [
      await steady(mixed, '--workers', '1'),
      await steady(mixed, '--workers', '2'),
      await steady(mixed, '--workers', '5'),
    ];
    expect(two.stdout).toBe(one.stdout);
    expect(five.stdout).toBe(one.stdout);
  });

  it('takes a byte order mark, line ends of either kind, and a last line without one', async () => {
    const two = ndjson(designs.slice(0, 2));
    const expected = (await steady(two)).stdout;
    expect((await steady(`\uFEFF${two.replaceAll('\n', '\r\n')}`)).stdout).toBe(expected);
    expect((await steady(two.trimEnd())).stdout).toBe(expected);
    expect(await steady('')).toMatchObject({ code: 0, stdout: '' });
  });

  it('knows units outside the trade', async () => {
    const tree = structuredClone(drawn);
    tree.chamber.length = '0.303 rod';
    const [{ error, assumed }] = read((await steady(ndjson([tree]))).stdout);
    expect({ error, converged: assumed?.converged }).toEqual({ error: undefined, converged: true });
  });

  it('takes what measured cooks told from the working folder, and says what it rests on', async () => {
    const folder = scratch();
    try {
      writeFileSync(folder.at('yard.fitted.yaml'), FITTED);
      const stdin = ndjson([
        { ...drawn, fitted: 'yard.fitted.yaml' },
        { ...drawn, fitted: 'yrd.fitted.yaml' },
      ]);
      const { stdout } = await pitwright(['batch', '--steady'], { stdin, cwd: folder.path });
      const [result, { error }] = read(stdout);
      expect(result.fitted).toEqual([expect.objectContaining({ name: 'yard-cook.csv' })]);
      expect(result.estimates.find(({ path }: Tree) => path === 'innerConvection').value).toBe(1.31);
      expect(error.faults).toEqual([expect.objectContaining({ path: 'fitted', nearest: 'yard.fitted.yaml' })]);
      writeFileSync(folder.at('pit.yaml'), `${readFileSync(plain, 'utf8')}\nfitted: yard.fitted.yaml\n`);
      const row = await pitwright(['batch', '--steady', '--changes', folder.at('pit.yaml')], { stdin: 'gauge\n""\n' });
      expect(read(row.stdout)).toEqual([{ ...result, changes: {} }]);
    } finally {
      folder.remove();
    }
  });

  it('has results for what physics can do without', async () => {
    const shut = structuredClone(drawn);
    shut.firebox.intakes[0].open = '0 %';
    shut.firebox.doorGap = '0 in^2';
    shut.chamber.doorGap = '0 in^2';
    const { code, stdout } = await steady(ndjson([shut]));
    expect(code).toBe(0);
    const [result] = read(stdout);
    expect(result.steady).toBeNull();
    expect(result.warnings.length).toBeGreaterThan(0);
  });

  it('--series adds the curves, --steady leaves the warm-up out', async () => {
    const stdin = ndjson([drawn]);
    const [whole] = read((await pitwright(['batch', '--series'], { stdin })).stdout);
    expect(whole.warmUp.series.time_s.length).toBeGreaterThan(10);
    const [short] = read((await steady(stdin)).stdout);
    expect(short.warmUp).toBeNull();
    expect(short.steady).toEqual(whole.steady);
    expect(await steady(stdin, '--series')).toMatchObject({ code: 2, stdout: '' });
  });

  it('gives the same bytes with one thread and as many as there are processors', async () => {
    const one = await steady(mixed, '--workers', '1');
    expect(linesOf(one.stdout)).toHaveLength(MIXED);
    expect(one.stdout).toBe(whole.stdout);
    expect(one.code).toBe(3);
    expect(one.stderr).toMatch(/16 lines in .*; 3 lines are error lines and say what is wrong\n$/);
  });
});

describe('batch: parts of a stream', () => {
  const args = ['batch', '--steady'];
  const run = (...more: string[]) => pitwright([...args, ...more], { stdin: mixed });

  it('goes on where a broken run stopped', async () => {
    const { stdout } = await run();
    for (const done of [1, 7, 15, 16, 20]) {
      const tail = linesOf(stdout).slice(done);
      expect(linesOf((await run('--from', String(done + 1))).stdout)).toEqual(tail);
    }
  });

  const parallel = canRunParallel();

  it.skipIf(!parallel)('gives the same bytes under GNU parallel, for a table of changes', async () => {
    const table = `name,all.plate,stacks[0].height\n${Array.from({ length: 7 }, (_, i) => `pit ${i},${i === 4 ? 'thick' : '1/8 in'},${30 + i} in\n`).join('')}`;
    const changes = [...args, '--changes', plain, '--workers', '1'];
    const { stdout } = await pitwright(changes, { stdin: table });
    expect(linesOf(stdout)).toHaveLength(7);
    expect(inParallel(['--pipe', '-k', '-N2', '--header', '.*\n'], changes, table).stdout).toBe(stdout);
  });

  it('takes its own share by --from and --count, so that the shares make the whole', async () => {
    const shares = [await run('--count', '5'), await run('--from', '6', '--count', '20')];
    expect(shares.map((each) => each.stdout).join('')).toBe(whole.stdout);
    expect(shares.map(({ stdout: lines }) => linesOf(lines).length)).toEqual([5, 11]);
  });

  it.skipIf(!parallel)('gives the same bytes under GNU parallel', async () => {
    const spread = inParallel(['--pipe', '-k', '-N8'], [...args, '--workers', '1'], mixed);
    expect(spread.stdout).toBe(whole.stdout);
    expect(spread.stderr.match(/pitwright: \d lines? in/g)).toHaveLength(2);
  });
});

describe('batch --changes', () => {
  const changed = (table: string, ...more: string[]) =>
    pitwright(['batch', '--changes', plain, '--steady', ...more], { stdin: table });

  it('changes several fields of one column, a door with its part, and says of every part its plate and what was thinned', async () => {
    const folder = scratch();
    const heavy = folder.at('heavy.yaml');
    const door = (plate: string) => `\n  door: { width: 14 in, height: 12 in, plate: ${plate} }`;
    writeFileSync(
      heavy,
      readFileSync(plain, 'utf8')
        .replace('plate: 1/4 in', `plate: 3/8 in${door('0.375 in')}`)
        .replace(/(chamber:[^]*?plate: 1\/4 in)/, `$1${door('1/2 in')}`),
    );
    const { stdout } = await pitwright(['batch', '--changes', heavy, '--steady'], {
      stdin: 'name,all.plate,"chamber.plate, stacks.wall"\nall,1/8 in,\nnamed,,3/16 in\n',
    });
    folder.remove();
    const plates = ({ geometry }: Tree) =>
      geometry.parts.map(({ plate_m, doorPlate_m }: Tree) =>
        [plate_m, doorPlate_m].map((each) => each && Number((each / 0.0254).toFixed(4))),
      );
    const codes = ({ warnings }: Tree) => warnings.map(({ code }: Tree) => code);
    const [all, named] = read(stdout);
    expect(plates(all)).toEqual([
      [0.125, 0.125],
      [0.125, 0.5],
      [0.1196, undefined],
    ]);
    expect(plates(named)).toEqual([
      [0.375, 0.375],
      [0.1875, 0.5],
      [0.1875, undefined],
    ]);
    expect(named.changes).toEqual({ 'chamber.plate, stacks.wall': '3/16 in' });
    expect([codes(all), codes(named)].map((each) => each.includes('heavier-part-thinned'))).toEqual([true, false]);
  });

  it.each([
    ['stacks.heigth', /did you mean 'stacks\.height'\?/],
    ['all.palte', /did you mean 'all\.plate'\?/],
    ['name,chamber plate', /'chamber plate' names no field; allowed: paths such as chamber\.plate/],
    ['gauge,gauge', /'gauge' stands in two columns/],
    ['chamber.plate.x', /chamber\.plate holds none/],
    ['', /'' names no field/],
  ])('refuses the head %s before it starts', async (head, message) => {
    const { code, stdout, stderr } = await changed(`${head}\n1,2\n`);
    expect({ code, stdout }).toEqual({ code: 3, stdout: '' });
    expect(stderr).toMatch(message);
    expect(stderr).toMatch(/^pitwright: standard input: .*\n$/);
  });

  it('refuses an empty input, a design with faults, and standard input for both', async () => {
    expect(await changed('')).toMatchObject({ code: 3, stdout: '' });
    expect(await pitwright(['batch', '--changes', 'no-such.yaml'])).toMatchObject({ code: 3, stdout: '' });
    const twice = await pitwright(['batch', '--changes', '-']);
    expect(twice).toMatchObject({ code: 2, stdout: '' });
    expect(twice.stderr).toMatch(/standard input holds the changes/);
  });

  const estimated = async (...changes: ((tree: Tree) => void)[]) => {
    const trees = changes.map((change) => {
      const tree = structuredClone(drawn);
      change(tree);
      return tree;
    });
    return read((await pitwright(['batch', '--steady'], { stdin: ndjson(trees) })).stdout);
  };

  it('changes the fields of the head; an empty cell leaves one, none takes it away', async () => {
    const { code, stdout } = await changed(
      'name,all.plate,chamber.insulation,stacks[0].height,fire.heat,gauge\n' +
        'thin,1/8 in,"{ material: ceramic fibre, thickness: 2 in }",,,\n' +
        '"tall, hot",,,48 in,"90,000 BTU/h",fireEnd\n' +
        ',,,,,none\n',
    );
    expect(code).toBe(0);
    const [thin, tall, same] = read(stdout);
    expect(thin.changes).toEqual({
      'all.plate': '1/8 in',
      'chamber.insulation': '{ material: ceramic fibre, thickness: 2 in }',
    });
    expect(same).toMatchObject({ name: drawn.name, changes: { gauge: 'none' } });
    const byHand = await estimated(
      (tree) => {
        tree.name = 'thin';
        tree.firebox.plate = tree.chamber.plate = '1/8 in';
        tree.chamber.insulation = { material: 'ceramic fibre', thickness: '2 in' };
      },
      (tree) => {
        Object.assign(tree, { name: 'tall, hot', gauge: 'fireEnd' });
        tree.stacks[0].height = '48 in';
        tree.fire.heat = '90,000 BTU/h';
      },
      (tree) => delete tree.gauge,
    );
    expect([thin, tall, same].map((result) => ({ ...result, changes: undefined }))).toEqual(byHand);
  });
});

describe('batch: where results go', () => {
  const folder = scratch();
  beforeAll(() => writeFileSync(folder.at('pit.yaml'), readFileSync(plain)));
  afterAll(folder.remove);
  const many = ndjson(Array.from({ length: 1500 }, () => drawn));

  it('a reader that hangs up ends it, without a word and long before the input ends', async () => {
    const { code, stdout, stderr } = await pitwright(['batch', '--steady'], { stdin: many, hangUp: true });
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
    expect(linesOf(stdout).length).toBeLessThan(200);
  });

  it('-o writes the same lines into a file, and makes none for a run that gets nowhere', async () => {
    const stdin = ndjson(designs);
    const { stdout } = await pitwright(['batch', '--steady'], { stdin });
    const ran = await pitwright(['batch', '--steady', '-o', folder.at('out.ndjson')], { stdin });
    expect(ran).toMatchObject({ code: 0, stdout: '' });
    expect(readFileSync(folder.at('out.ndjson'), 'utf8')).toBe(stdout);
    const stopped = await pitwright(['batch', '--changes', folder.at('pit.yaml'), '-o', folder.at('no.ndjson')], {
      stdin: 'plate\n',
    });
    expect(stopped.code).toBe(3);
    const clash = await pitwright(['batch', '--changes', folder.at('pit.yaml'), '-o', folder.at('pit.yaml')]);
    expect(clash.code).toBe(2);
    expect(readdirSync(folder.path).sort()).toEqual(['out.ndjson', 'pit.yaml']);
  });

  it('Ctrl-C leaves whole lines, and a run from there gives the rest', async () => {
    const { code, stdout } = await pitwright(['batch', '--steady'], { stdin: many, interrupt: true });
    expect(code).toBe(130);
    expect(stdout.endsWith('}\n')).toBe(true);
    const results = read(stdout);
    expect(results.length).toBeLessThan(1500);
    for (const { assumed } of results) expect(assumed.converged).toBe(true);
    const next = await pitwright(['batch', '--steady', '--from', String(results.length + 1), '--count', '1'], {
      stdin: many,
    });
    expect(next.stdout).toBe(`${linesOf(stdout)[0]}\n`);
  });

  it.each([
    ['--count', 'all'],
    ['--workers', '65'],
  ])('%s %s: exit 2 and what is allowed', async (option, value) => {
    await expectRefusal(['batch', option, value], 2, /whole number from \d+ to \d+/);
  });
});

beforeAll(async () => {
  whole = await pitwright(['batch', '--steady'], { stdin: mixed });
});
