import { describe, expect, it } from 'vitest';
import { logOf } from './logTexts.js';
import { ALL, EVERYDAY, honestLog } from './honestLogs.js';
import { expectLeftAlone } from './leftAlone.js';

/** A logger's spike of one reading on the gauge, at every hundredth row. */
function withSpikes(text: string, height: number): { text: string; rows: number[] } {
  const lines = text.trim().split('\n');
  const rows = lines.flatMap((_, i) => (i > 1 && i < lines.length - 1 && i % 100 === 50 ? [i] : []));
  for (const row of rows) {
    const cells = lines[row].split(',');
    cells[1] = (Number(cells[1]) + height).toFixed(1);
    lines[row] = cells.join(',');
  }
  return { text: `${lines.join('\n')}\n`, rows };
}

describe('honest probes', () => {
  it.each(Array.from({ length: ALL - EVERYDAY }, (_, i) => EVERYDAY + i))(
    'are left as they are, seed %i',
    expectLeftAlone,
  );

  it.each([100, -100])('lose their spikes of %i °F, nearly all of them, and nothing else', (height) => {
    let made = 0;
    let found = 0;
    for (let seed = 0; seed < 30; seed++) {
      const { text, rows } = withSpikes(honestLog(seed), height);
      if (rows.length < 2) continue;
      made += rows.length;
      const log = logOf(text);
      for (const { code, where, count } of log.notes) {
        expect([code, where]).toEqual(['outlier', 'gauge [°F]']);
        found += count;
      }
    }
    expect(made).toBeGreaterThan(200);
    expect(found).toBeLessThanOrEqual(made);
    // those beside a door's fall, or within eight times a probe's noise, stay
    expect(found).toBeGreaterThan(0.9 * made);
  });
});
