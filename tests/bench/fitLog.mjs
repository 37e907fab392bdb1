/**
 * Writes a made-up log of 6 h with a reading of three probes every 10 s, 3 °F of noise and dropouts, as CSV.
 * Arguments: library, design file.
 */
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { pathToFileURL } from 'node:url';

const [library, file] = process.argv.slice(2);
const { fitUnknownsOf, readDesign, runLog, seededRandom } = await import(pathToFileURL(resolve(library)).href);
const random = seededRandom(5);
for (let i = 0; i < 100; i++) random();
const gauss = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());

const { design } = readDesign(readFileSync(file, 'utf8'), { fileName: file });
const truth = structuredClone(design);
const factors = { innerConvection: 1.3, 'fire.radiant': 1.2, 'chamber.doorGap': 1.4, 'wood.heat': 0.93 };
for (const { path, fields } of fitUnknownsOf(design)) {
  if (path in factors) for (const { value, set } of fields) set(truth, value * factors[path]);
}
const times = Array.from({ length: 2161 }, (_, i) => 10 * i);
const stations = ['fireEnd', 'middle', 'stackEnd'];
const wood = Array.from({ length: 11 }, (_, i) => ({ time_s: 1950 * i, mass_kg: i === 0 ? 3.5 : 1.6 }));
const door = { from_s: 11_400, to_s: 11_490 };
const { computed } = runLog(
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
const cell = (kelvin) => (random() < 0.03 ? '' : (1.8 * (kelvin - 273.15) + 32 + 3 * gauss()).toFixed(1));
const pounds = (t) => wood.find(({ time_s }) => time_s === t)?.mass_kg ?? '';
console.log('time [s],fire end [°F],middle [°F],stack end [°F],wood [kg],door');
times.forEach((t, i) => {
  const open = t >= door.from_s && t < door.to_s ? 'open' : 'shut';
  console.log([t, ...computed.map((row) => cell(row[i])), pounds(t), open].join(','));
});
