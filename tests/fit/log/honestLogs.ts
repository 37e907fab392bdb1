import { textOf } from './logTexts.js';
import { generator } from '../../design/randomDesign.js';

interface Probe {
  header: string;
  /** above outdoors when hot [°F], and time constants of stem and rise [s] */
  top: number;
  lag: number;
  rise: number;
  /** share of an open door that it feels, and of a new split */
  door: number;
  fire: number;
}

/** Seeds of logs, of which the everyday tests take the first. */
export const EVERYDAY = 20;
export const ALL = 60;

export const PROBES: readonly Probe[] = [
  { header: 'gauge [°F]', top: 180, lag: 60, rise: 2400, door: 0.9, fire: 0.2 },
  { header: 'fire end [°F]', top: 210, lag: 60, rise: 2000, door: 0.7, fire: 0.25 },
  { header: 'stack end gas [°F]', top: 170, lag: 6, rise: 1500, door: 0.9, fire: 0.3 },
  { header: 'firebox gas [°F]', top: 800, lag: 6, rise: 500, door: 0.05, fire: 0.4 },
  { header: 'middle steel [°F]', top: 120, lag: 1500, rise: 3000, door: 0.3, fire: 0.1 },
];

/** Nothing is wrong with it: a cold start, splits every half hour, doors of some minutes, noise, rounding. */
export function honestLog(seed: number): string {
  const random = generator(seed);
  const normal = (): number => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
  const pick = <T>(items: readonly T[]): T => items[Math.floor(random() * items.length)];
  const step = pick([1, 5, 10, 30, 60, 300]);
  const noise = pick([0, 0.3, 1, 3]);
  const digits = pick([0.1, 0.5, 1, 5]);
  const length = step === 1 ? 5400 : 4 * 3600;
  const lit = pick([0, 0, 600, 1800]);
  const doors = Array.from({ length: 3 }, () => ({ from: random() * length, lasts: 10 + 240 * random() }));
  const split = 1500 + 1200 * random();
  const state = PROBES.map(() => 70);
  const rows: string[][] = [];
  for (let time = 0; time < length; time += 1) {
    const since = Math.max(0, time - lit);
    const open = doors.some(({ from, lasts }) => time >= from && time < from + lasts);
    const flame = since === 0 ? 0 : Math.exp(-((since % split) / split) * 2);
    PROBES.forEach(({ top, lag, rise, door, fire }, p) => {
      const hot = top * (1 - Math.exp(-since / rise)) * (1 + fire * (flame - 0.4)) * (open ? 1 - door : 1);
      state[p] += (70 + hot - state[p]) / lag;
    });
    if (time % step > 0) continue;
    const flicker = PROBES.map(({ header }) => (header.startsWith('firebox gas') ? 10 : 1));
    const cells = state.map((value, p) => {
      const read = value + noise * flicker[p] * normal();
      return (Math.round(read / digits) * digits).toFixed(1);
    });
    rows.push([String(time), ...cells]);
  }
  return textOf(rows, ['time [s]', ...PROBES.map(({ header }) => header)]);
}
