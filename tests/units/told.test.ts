import { expect, it } from 'vitest';
import { amount, inWords, told, type Told } from '../../src/units/index.js';

it.each<[Told, string, string, string]>([
  [
    told`it runs at ${amount('temperature', 831.15)}; above`,
    'it runs at 1,036 °F; above',
    'it runs at 558 °C; above',
    'it runs at 1,036 °F (558 °C); above',
  ],
  [
    told`${amount('massFlow', 1.98e-4, { digits: 2 })} (${0.7} %)`,
    '1.6 lb/h (0.7 %)',
    '0.71 kg/h (0.7 %)',
    '1.6 lb/h (0.71 kg/h) (0.7 %)',
  ],
  [told`by ${amount('length', 0.1016, { digits: 2, unit: 'in' })}`, 'by 4 in', 'by 100 mm', 'by 4 in (100 mm)'],
  [told`within ${amount('time', 1800)}`, 'within 30 min', 'within 30 min', 'within 30 min'],
  [
    told`a ${told`full ${[amount('power', 9350)]}`}`,
    'a full 31,900 BTU/h',
    'a full 9.35 kW',
    'a full 31,900 BTU/h (9.35 kW)',
  ],
  ['5 °F (3 K), typed', '5 °F (3 K), typed', '5 °F (3 K), typed', '5 °F (3 K), typed'],
])('%j: %s, %s, %s', (sentence, shop, si, both) => {
  expect([inWords(sentence, 'shop'), inWords(sentence, 'si'), inWords(sentence)]).toEqual([shop, si, both]);
});
