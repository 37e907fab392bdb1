/** How much a pit is used: what its plate has to last through. */
import { range } from '../ranges.js';
import { block } from './blocks.js';
import { count, quantity } from './field.js';

export const use = block('How much it is used, for what its hottest plate loses to scale.', {
  cooks: count('cooks', range('number', '1', '1000'), 'Cooks a year.', { default: '50', print: { bare: true } }),
  lit: quantity(range('time', '10 min', '72 h'), 'How long the fire burns in one.', { default: '8 h' }),
  coals: quantity(range('temperature', '200 °F', '1400 °F'), 'Steel of the firebox where coals lie against it.', {
    default: '500 °C',
    says: '930 °F',
    guess: '750-1,100 °F',
  }),
  scale: quantity(range('length', '0.01 mm', '2 mm'), 'Thickness at which scale falls off the steel.', {
    default: '0.1 mm',
    guess: '0.05-0.3 mm',
    print: { shop: 'in', si: 'mm' },
  }),
});
