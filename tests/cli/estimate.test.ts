import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { parse } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import { drawn, expectNumbersOf, ndjson, read } from './batchLines.js';
import { eachScratch, example, expectRefusal, pitwright } from './support/run.js';

const folder = eachScratch();

const plain = example('plain-24.yaml');
const plainText = readFileSync(plain, 'utf8');

/** Keys and units of the result format. */
function expectContract(json: string): void {
  const tree = JSON.parse(json);
  expect(Object.keys(tree)).toEqual(
    expect.arrayContaining([
      'schema',
      'tool',
      'design',
      'warnings',
      'geometry',
      'steady',
      'assumed',
      'warmUp',
      'balance',
    ]),
  );
  expect(Object.keys(tree.steady)).toEqual(
    expect.arrayContaining([
      'fire_W',
      'wood_kg_per_s',
      'air_kg_per_s',
      'excessAirRatio',
      'converged',
      'iterations',
      'stations',
      'heatLoss_W',
      'draft',
      'openings',
    ]),
  );
  expect(Object.keys(tree.steady)).toEqual(Object.keys(tree.assumed));
  expect(Object.keys(tree.steady.heatLoss_W)).toEqual(
    expect.arrayContaining(['firebox', 'chamber', 'upright', 'stackWall', 'stackGas', 'leaks', 'total']),
  );
  expect(Object.keys(tree.steady.draft)).toEqual(
    expect.arrayContaining([
      'stackBase_Pa',
      'firebox_Pa',
      'theoretical_Pa',
      'stackVelocity_m_per_s',
      'intakeVelocity_m_per_s',
    ]),
  );
  expect(Object.keys(tree.warmUp)).toEqual(
    expect.arrayContaining(['gauge_s', 'soaked_s', 'woodToGauge_kg', 'woodToSoaked_kg', 'series']),
  );
  const { series } = tree.warmUp;
  for (const key of ['fire_W', 'thermometer_K', 'gas_K', 'steel_K']) {
    expect(series[key]).toHaveLength(series.time_s.length);
  }
  const middle = tree.steady.stations.find((station: { name: string }) => station.name === 'middle');
  expect(middle.thermometer_K).toBeCloseTo(394.26, 1);
}

describe('what estimate writes to files', () => {
  it('the contract as JSON in SI, as a line of a batch has it, curves and charts in one run, nothing but them', async () => {
    const charts = folder.at('a/charts');
    const run = await pitwright([
      'estimate',
      plain,
      '--json',
      '-o',
      folder.at('pit.json'),
      '--csv',
      folder.at('pit.csv'),
      '--charts',
      charts,
    ]);
    expect(run).toMatchObject({ code: 0, stdout: '' });
    expect(readdirSync(folder.path).sort()).toEqual(['a', 'pit.csv', 'pit.json']);
    const pictures = readdirSync(charts).sort();
    expect(pictures).toEqual([
      'draft.png',
      'heat-loss.png',
      'vent-curve.png',
      'warm-up-gas.png',
      'warm-up-steel.png',
      'warm-up-thermometer.png',
    ]);
    for (const name of pictures) {
      expect(readFileSync(`${charts}/${name}`).subarray(1, 4).toString()).toBe('PNG');
      expect(run.stderr).toContain(name);
    }
    const [head, ...rows] = parse(readFileSync(folder.at('pit.csv'))) as string[][];
    expect(head[0]).toBe('time [min]');
    expect(rows.length).toBeGreaterThan(10);
    for (const cell of rows.flat()) expect(Number.isFinite(Number(cell))).toBe(true);
    const json = readFileSync(folder.at('pit.json'), 'utf8');
    expectContract(json);
    const batch = await pitwright(['batch', '--workers', '1'], { stdin: ndjson([drawn]) });
    expect(batch.code).toBe(0);
    expect(batch.stderr).toMatch(/^pitwright: 1 line in [\d.]+ s, [\d.]+ a second\n$/);
    // with charts it follows the vents, too
    const { ventCurve, ventTurn, ...rest } = JSON.parse(json);
    expect(ventTurn.from).toBeLessThan(ventCurve.open.at(-1));
    expectNumbersOf(rest, drawn, read(batch.stdout)[0]);
  });

  it.each([['two outputs into one file', ['--csv', 'same', '-o', 'same'], /both name same/]])(
    '%s: exit 2 and nothing written',
    async (_, args, message) => {
      writeFileSync(folder.at('file'), 'kept');
      await expectRefusal(['estimate', plain, ...args], 2, message, { cwd: folder.path });
      expect(readdirSync(folder.path)).toEqual(['file']);
    },
  );

  it('leaves no file and no folder behind when the design is wrong', async () => {
    const args = ['-o', 'x.txt', '--csv', 'x.csv', '--charts', 'new/charts'];
    const { code } = await pitwright(['estimate', '-', ...args], { cwd: folder.path, stdin: 'schema: 1\n' });
    expect(code).toBe(3);
    expect(readdirSync(folder.path)).toEqual([]);
  });
});

describe('a design that asks for what physics cannot give', () => {
  // two small vents can't feed a fire that holds 700 °F
  const starved = plainText.replace('target: 250 °F', 'target: 700 °F').replace(/diameter: 4 in/, 'diameter: 1 in');

  it('ends with 4, says why on stderr, and still gives the numbers that exist', async () => {
    const { code, stdout, stderr } = await pitwright(['estimate', '-', '--json'], { stdin: starved });
    expect(code).toBe(4);
    expect(JSON.parse(stdout).steady).toBeNull();
    expect(stderr).toMatch(/^pitwright: no fire holds the target in this design$/m);
    expect(stderr).toMatch(/^ {2}- /m);
    expect(stderr).not.toMatch(/^ +at /m);
  });
});
