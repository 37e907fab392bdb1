import { describe, expect, it } from 'vitest';
import { header, table, written, saidOf } from './lyingLogs.js';

const columns = header.split(',');

describe('a log that is right', () => {
  it('fits, with nothing said against it', () => {
    const { refused, error_K, codes } = saidOf(written(header));
    expect(refused).toBe(false);
    expect(1.8 * error_K).toBeLessThan(3);
    expect(codes).toEqual([]);
  });
});

describe('a log that lies', () => {
  it.each([['thermometers in °C that were °F', written(header.replaceAll('[°F]', '[°C]'))]])(
    '%s: is refused or spoken against',
    (_, text) => {
      const { refused, codes } = saidOf(text);
      expect(refused || codes.length > 0).toBe(true);
    },
  );

  it('was changed in each of these cases', () => {
    expect(columns).toContain('wood [lb]');
    expect(table.some((row) => row.startsWith('11:18:00') && row.split(',')[5] !== '')).toBe(true);
  });
});
