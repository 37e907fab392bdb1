import { describe, expect, it } from 'vitest';
import { compareCharts } from '../../src/charts/compareCharts.js';
import { compareRows, rowHead, tellingOfRow } from '../../src/report/compareRows.js';
import { compareText } from '../../src/report/text/compareText.js';
import { comparisonOf, expectWhole } from './comparedExample.js';

describe('a comparison told', () => {
  it('is whole in every form, within 100 columns', () => expectWhole('plain-24.yaml'));

  it('prints a value, its difference and its percent in the row’s unit', async () => {
    const comparison = await comparisonOf('plain-24.yaml', 'all.plate=1/8 in | 1/4 in');
    const rows = compareRows(comparison);
    const row = (key: string) => rows.find(({ measure }) => measure.key === key)!;
    const told = (key: string, system: 'shop' | 'si') => {
      const { cells } = row(key);
      const telling = tellingOfRow(row(key), system, '$');
      return [
        rowHead(row(key), telling),
        ...cells.map(({ value }) => telling.number(value)),
        telling.difference(cells[1]),
        telling.percent(cells[1]),
      ];
    };
    expect(told('steel_kg', 'shop')).toEqual(['all steel [lb]', '296', '564', '+268', '+91 %']);
    expect(told('steelCost', 'shop')[0]).toBe('its steel [$]');
    // a temperature's difference takes no offset, and no percentage
    const wind = compareRows(await comparisonOf('plain-24.yaml', 'site.wind=0 mph | 20 mph'));
    const hottest = wind.find(({ measure }) => measure.key === 'hold.hottestOutside_K')!;
    const telling = tellingOfRow(hottest, 'si', '$');
    const difference = telling.difference(hottest.cells[1]);
    const percent = telling.percent(hottest.cells[1]);
    expect(hottest.cells[1].difference!).toBeLessThan(-2);
    expect(Math.abs(Number(difference.replace('−', '-')) - hottest.cells[1].difference!)).toBeLessThanOrEqual(1);
    expect(percent).toBe('');
    expect(told('hold.fire_W', 'shop').slice(3)).toEqual(['same', '']);
  });

  it('takes the rows that are the same in all together, each with its number', async () => {
    const comparison = await comparisonOf('plain-24.yaml', 'chamber.plate=3/16 in | 1/4 in');
    const [, table] = /\n( {2,}3\/16 in +1\/4 in\n[^]*?)\n\n/.exec(compareText(comparison, 'shop'))!;
    const [rows, same] = table.split('The same: ');
    expect(rows).not.toMatch(/ same/);
    for (const row of compareRows(comparison)) {
      const telling = tellingOfRow(row, 'shop', '$');
      const [base, option] = row.cells;
      if (telling.difference(option) === 'same') {
        const told = `${rowHead(row, { ...telling, unit: '' })} ${telling.quantity(base.value)}`;
        expect(same.replace(/\s+/g, ' ')).toContain(told);
      } else expect(rows).toContain(`  ${rowHead(row, telling)} `);
    }
  });

  it('shows the first of many options in its pictures, and says so', async () => {
    const few = await comparisonOf('plain-24.yaml', 'site.wind=0 mph | 20 mph');
    const many = { ...few, options: Array.from({ length: 12 }, () => few.options[0]) };
    const [{ config }] = compareCharts(many);
    expect(config.data.datasets).toHaveLength(8);
    expect(JSON.stringify(config.options)).toContain('the first 8 of 12 options');
  });
});
