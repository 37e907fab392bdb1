import { describe, expect, it } from 'vitest';
import { compareCharts } from '../../src/charts/compareCharts.js';
import { compareRows, isSame, rowHead, sameWords, tellingOfRow } from '../../src/report/compareRows.js';
import { compareText } from '../../src/report/text/compareText.js';
import { comparisonOf } from './comparedExample.js';

describe('a comparison told', () => {
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

  it('takes what is the same in all of several tables once, behind the last', async () => {
    const comparison = await comparisonOf('plain-24.yaml', 'chamber.plate=1/8 in | 3/16 in | 1/4 in | 3/8 in');
    const text = compareText(comparison, 'shop').replace(/\s+/g, ' ');
    expect(text.match(/ Warm-up first reads/g)!.length).toBeGreaterThan(1);
    const [before, inAll] = text.split('The same in all: ');
    const rows = compareRows(comparison);
    const others = comparison.options.flatMap(({ label }, i) => (label === comparison.baseline ? [] : [i]));
    for (const row of rows.filter((each) => isSame(each, others, 'shop'))) {
      const words = sameWords([row], 0, 'shop', '$').replace(/^[^(]*\((.*)\)$/, '$1');
      expect(inAll).toContain(words);
      expect(before).not.toContain(`${words},`);
    }
  });

  it('says what a cook feels of plate, and nothing of it where more differs', async () => {
    const told = async (...vary: string[]) =>
      compareText(await comparisonOf('plain-24.yaml', ...vary), 'shop').replace(/\s+/g, ' ');
    const degrees = '\\d[\\d.]* °F';
    expect(await told('all.plate=1/8 in | 1/4 in')).toMatch(
      new RegExp(
        `A cook hardly tells them apart \\(1/8 in and 1/4 in\\): the thermometer swings ${degrees} and ${degrees}; ` +
          `a split 20 min late leaves it at ${degrees} and ${degrees}; the door is made up for after \\d+ s in all\\.`,
      ),
    );
    expect(await told('stacks[0].height=24 in | 36 in')).not.toContain('A cook ');
  });

  it('leaves out of a table what neither of its options has', async () => {
    const two = 'stacks=[{part: chamber, diameter: 4 in, height: 36 in, wall: 11 ga, base: 42 in}, {part: chamber, diameter: 4 in, height: 36 in, wall: 11 ga, base: 42 in}]'; // prettier-ignore
    const comparison = await comparisonOf('plain-24.yaml', `${two} | [{part: chamber, diameter: 6 in, height: 36 in, wall: 11 ga, base: 42 in}]`); // prettier-ignore
    const [, other] = comparison.options;
    const pair = {
      ...comparison,
      options: [comparison.options[0], { ...comparison.options[0], label: 'again' }, other],
    };
    for (const block of compareText(pair, 'shop')
      .split('\n\n')
      .filter((text) => text.includes('\nPlate\n'))) {
      expect(block).not.toMatch(/^ +stack[ 0-9]* +– +–/m);
    }
  });

  it('tells a warning of two fires once', async () => {
    const comparison = await comparisonOf('boxed-22.yaml', 'chamber.plate=3/16 in | 1/4 in');
    const text = compareText(comparison, 'shop').replace(/\s+/g, ' ');
    expect(text.split(' of smoke (')).toHaveLength(2);
    expect(text).toContain('(also while holding; likewise, with numbers of their own: 1/4 in)');
  });

  it('shows the first of many options in its pictures, and says so', async () => {
    const few = await comparisonOf('plain-24.yaml', 'site.wind=0 mph | 20 mph');
    const many = { ...few, options: Array.from({ length: 12 }, () => few.options[0]) };
    const [{ config }] = compareCharts(many);
    expect(config.data.datasets).toHaveLength(8);
    expect(JSON.stringify(config.options)).toContain('the first 8 of 12 options');
  });
});
