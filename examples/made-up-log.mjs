/**
 * Writes yard-cook.csv: a cook's log that is MADE UP, for `pitwright fit` to be tried on. No pit was measured.
 *
 * It is what the model gives for the plain 24 in pit with other estimates than the design's (TRUTH below), read as a cheap
 * logger would: half a minute apart, with noise, a lag, a probe that reads high, dropouts, a gap, and the door open once.
 *
 * node examples/made-up-log.mjs > examples/yard-cook.csv    (after npm run bundle)
 */
import { readFileSync } from 'node:fs';
import { fitUnknownsOf, readDesign, runLog, seededRandom } from '../dist/index.js';

const TRUTH = {
  innerConvection: 1.4,
  'fire.radiant': 0.36,
  'chamber.doorGap': 1.5, // times what the design says
  'wood.heat': 0.92, // times what the design says
  'estimates.stemFill': 0.55,
};
const FACTORS = ['chamber.doorGap', 'wood.heat'];
const SEED = 412;
const ROW_S = 30;
const LENGTH_S = 6 * 3600;
const NOISE_K = 1.5 / 1.8;
const LAG_S = 20;
const OFFSETS_K = { fireEnd: 0, middle: 2.5 / 1.8, stackEnd: -1 / 1.8 };
const POUND = 0.45359237;
/** minutes and pounds */
const WOOD = [[0, 8], [14, 4], [32, 4], [55, 3.5], [82, 3.5], [108, 3], [137, 3], [166, 3.5], [194, 3], [223, 3], [251, 3.5], [280, 3], [309, 3], [338, 2.5]];
const DOOR_MIN = [190, 191.5];
const VENTS = [[0, 1], [75, 0.7], [240, 0.85]];
const GAP_MIN = [117, 130];

const random = seededRandom(SEED);
for (let i = 0; i < 100; i++) random();
const gauss = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());

const design = readDesign(readFileSync(new URL('plain-24.yaml', import.meta.url), 'utf8'), { fileName: 'plain-24.yaml' }).design;
const truth = structuredClone(design);
for (const { path, fields } of fitUnknownsOf(design)) {
  if (!(path in TRUTH)) continue;
  for (const { value, set } of fields) set(truth, FACTORS.includes(path) ? value * TRUTH[path] : TRUTH[path]);
}

const times = Array.from({ length: LENGTH_S / ROW_S + 1 }, (_, i) => i * ROW_S);
const air = times.map((t) => 293.7 + 5 * Math.sin((Math.PI * t) / (1.3 * LENGTH_S)));
const wind = times.map((t) => Math.max(0.2, 2 + 0.7 * Math.sin(t / 2100) + 0.35 * gauss()));
const stations = Object.keys(OFFSETS_K);
const channel = (station) => ({ header: station, station, measured: 'thermometer', time_s: times, value_K: air, resolution_K: 0 });
const log = {
  name: 'yard-cook.csv',
  length_s: LENGTH_S,
  interval_s: ROW_S,
  rows: times.length,
  channels: [...stations.map(channel), { ...channel('firebox'), measured: 'steel' }],
  wood: WOOD.map(([minutes, pounds]) => ({ time_s: 60 * minutes, mass_kg: pounds * POUND })),
  fire: null,
  air: { time_s: times, value: air },
  wind: { time_s: times, value: wind },
  intakes: { time_s: VENTS.map(([minutes]) => 60 * minutes), value: VENTS.map(([, open]) => open) },
  damper: null,
  door: [{ from_s: 60 * DOOR_MIN[0], to_s: 60 * DOOR_MIN[1] }],
  notes: [],
};
// steps far finer than those of a fit
const run = runLog(truth, log, { tolerance: 0.02 });

const fahrenheit = (kelvin) => (1.8 * (kelvin - 273.15) + 32).toFixed(1);
/** A lag of first order behind a course that is straight from row to row. */
const lagged = run.computed.map((row) => {
  const share = Math.exp(-ROW_S / LAG_S);
  let read = row[0];
  return Array.from(row, (value, i) => {
    if (i === 0) return read;
    const behind = ((value - row[i - 1]) / ROW_S) * LAG_S;
    read = value - behind + (read - row[i - 1] + behind) * share;
    return read;
  });
});
const cell = (column, i) => {
  if (random() < 0.01) return '---';
  return fahrenheit(lagged[column][i] + (OFFSETS_K[stations[column]] ?? 0) + NOISE_K * gauss());
};
const clock = (t) => {
  const two = (value) => String(value).padStart(2, '0');
  return `${two(9 + Math.floor((t + 1800) / 3600))}:${two(Math.floor(((t + 1800) % 3600) / 60))}:${two(t % 60)}`;
};
const woodAt = (t) => WOOD.find(([minutes]) => 60 * minutes === t)?.[1] ?? '';
const ventAt = (t) => 100 * VENTS.findLast(([minutes]) => 60 * minutes <= t)[1];
const doorAt = (t) => (t >= 60 * DOOR_MIN[0] && t < 60 * DOOR_MIN[1] ? 'open' : 'shut');

const rows = times.flatMap((t, i) => {
  const cells = [0, 1, 2, 3].map((column) => cell(column, i));
  if (t > 60 * GAP_MIN[0] && t < 60 * GAP_MIN[1]) return [];
  const weather = [fahrenheit(air[i]), (wind[i] / 0.44704).toFixed(1)];
  return [[clock(t), ...cells, woodAt(t), ventAt(t), doorAt(t), ...weather].join(',')];
});
const head = 'time,fire end [°F],middle [°F],stack end [°F],firebox steel [°F],wood [lb],intakes [%],door,air [°F],wind [mph]';
process.stdout.write(
  [
    '# MADE UP by made-up-log.mjs from the model itself, with other estimates than the design: no pit was measured.',
    head,
    ...rows,
    '',
  ].join('\n'),
);
