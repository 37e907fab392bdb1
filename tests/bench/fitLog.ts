/**
 * Writes a made-up log of 6 h with a reading of three probes every 10 s, 3 °F of noise and dropouts, as CSV.
 * Argument: design file.
 */
import { readFileSync } from 'node:fs';
import { fitUnknownsOf, readDesign, runLog, seededRandom } from '../../src/index.js';

const [file] = process.argv.slice(2);
const random = seededRandom(5);
for (let i = 0; i < 100; i++) random();
const gauss = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());

const { design } = readDesign(readFileSync(file, 'utf8'), { fileName: file });
if (!design) throw new Error(`${file} has faults`);
const truth = structuredClone(design);
const factors: Record<string, number> = {
  innerConvection: 1.3,
  'fire.radiant': 1.2,
  'chamber.doorGap': 1.4,
  'wood.heat': 0.93,
};
for (const { path, fields } of fitUnknownsOf(design)) {
  if (path in factors) for (const { value, set } of fields) set(truth, value * factors[path]);
}
const times = Array.from({ length: 2161 }, (_, i) => 10 * i);
const stations = ['fireEnd', 'middle', 'stackEnd'] as const;
const wood = Array.from({ length: 11 }, (_, i) => ({ time_s: 1950 * i, mass_kg: i === 0 ? 3.5 : 1.6 }));
const door = { from_s: 11_400, to_s: 11_490 };
const run = runLog(
  truth,
  {
    name: 'bench',
    length_s: 21_600,
    interval_s: 10,
    rows: times.length,
    channels: stations.map((station) => ({
      header: station,
      station,
      measured: 'thermometer',
      time_s: times,
      value_K: times,
      resolution_K: 0,
    })),
    wood,
    fire: null,
    air: null,
    wind: null,
    intakes: null,
    damper: null,
    door: [door],
    notes: [],
  },
  { tolerance: 0.1 },
);
if (!run) throw new Error(`${file} can't be followed`);
const cell = (kelvin: number) => (random() < 0.03 ? '' : (1.8 * (kelvin - 273.15) + 32 + 3 * gauss()).toFixed(1));
const pounds = (t: number) => wood.find(({ time_s }) => time_s === t)?.mass_kg ?? '';
console.log('time [s],fire end [°F],middle [°F],stack end [°F],wood [kg],door');
times.forEach((t, i) => {
  const open = t >= door.from_s && t < door.to_s ? 'open' : 'shut';
  console.log([t, ...run.computed.map((row) => cell(row[i])), pounds(t), open].join(','));
});
