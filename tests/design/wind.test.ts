import { describe, expect, it } from 'vitest';
import { formatFaults } from '../../src/design/faults.js';
import { geometryOf } from '../../src/design/geometryOf.js';
import { windAtPit } from '../../src/design/windAtPit.js';
import { checkText } from '../../src/report/text/checkText.js';
import { estimate } from '../../src/study/estimate/estimate.js';
import { weathersOf } from '../../src/study/size/weather.js';
import { changed, designOf, faultsOf, OVER, read } from './designFiles.js';

const AT_STATION = ['wind: 5 mph', 'wind: 10 mph\n  windAt: station'] as [string, string];
const IN_SUBURB = ['wind: 5 mph', 'wind: 10 mph\n  windAt: station\n  terrain: suburb'] as [string, string];
const MPH = 0.44704;

describe('wind of a weather station', () => {
  it('is the pit’s own where nothing else is said', () => {
    const { design, defaults } = read(changed()) as { design: ReturnType<typeof designOf>; defaults: string[] };
    expect(windAtPit(design)).toBe(5 * MPH);
    expect(defaults).toContain('site.windAt');
    expect(design.site.terrain).toBeUndefined();
  });

  // derived by hand from ASHRAE's table: (270/10)^0.14 = 1.5863, (1.016/370)^0.22 = 0.2733, (1.016/270)^0.14 = 0.4577
  it.each([
    ['open country where no terrain is given', AT_STATION, 0.726],
    ['a suburb', IN_SUBURB, 0.4334],
  ])('is brought to the middle of the chamber, 40 in up: %s', (_, change, share) => {
    expect(windAtPit(designOf(changed(change))) / (10 * MPH)).toBeCloseTo(share, 3);
  });

  it('is brought to the middle of the upright where there is no chamber', () => {
    const design = designOf(OVER.replace('fire:', `site: { wind: 10 mph, windAt: station, terrain: suburb }\nfire:`));
    expect(windAtPit(design) / (10 * MPH)).toBeCloseTo(1.5863 * (design.upright!.centre / 370) ** 0.22, 4);
  });

  it('cools the pit as the same wind at the pit does', () => {
    const station = designOf(changed(IN_SUBURB));
    const own = { ...station, site: { ...station.site, wind: windAtPit(station), windAt: 'pit' as const } };
    expect(estimate(station).steady!.fire_W).toBe(estimate(own).steady!.fire_W);
  });

  it('is the pit’s in the weather that sizing adds', () => {
    const design = designOf(changed(['wind: 5 mph', 'wind: 60 mph\n  windAt: station\n  terrain: suburb']));
    const windy = weathersOf(design).find(({ key }) => key === 'windOnIntake')!;
    expect(windAtPit({ ...design, site: windy.site })).toBeCloseTo(windAtPit(design), 12);
  });

  it('is told by check with both speeds and the height', () => {
    const { design, defaults, warnings } = read(changed(IN_SUBURB)) as never as Parameters<typeof checkText>[0];
    const text = checkText({ design, defaults, warnings, geometry: geometryOf(design) }, 'shop').replace(/\s+/g, ' ');
    expect(text).toMatch(
      /Wind 4\.33 mph .*at the pit: 10 mph .*at the weather station, brought to 40 in .*in a suburb/,
    );
  });

  it('a terrain without a station’s wind is refused, with the right form', () => {
    const [fault] = faultsOf(changed(['wind: 5 mph', 'wind: 5 mph\n  terrain: suburb']));
    expect(fault).toMatchObject({ path: 'site.terrain', line: 6, code: 'unknown-name' });
    expect(fault.example).toContain('windAt: station');
    const [other] = faultsOf(changed(['wind: 5 mph', 'wind: 5 mph\n  windAt: station\n  terrain: suburbs']));
    expect(other).toMatchObject({ path: 'site.terrain', nearest: 'suburb' });
    const { example } = fault;
    expect(
      formatFaults(read(changed(['site:\n  air: 70 °F\n  wind: 5 mph\n  altitude: 500 ft', example!])).faults ?? []),
    ).toBe('');
  });
});
