/** What a pit is touched by and carried on: handles, trailer, loads. */
import { FINISHES } from '../catalog/index.js';
import { range } from '../ranges.js';
import { PARTS } from '../stations.js';
import { block, readRows, where } from './blocks.js';
import { choice, literals, quantity, text } from './field.js';
import { type Soft } from './fieldType.js';
import { EMISSIVITY, station, steel } from './shared.js';

const POSITION = range('length', '-60 ft', '60 ft');
const RATING = range('mass', '10 lb', '40,000 lb');

const wound = ({ kind }: Soft) => kind === 'coil';

const HANDLE = {
  name: text('Which one: firebox door, damper.'),
  part: choice(PARTS, 'The part it is fixed to.'),
  station: station('Where on that part. Default: the hottest of its stations.'),
  kind: choice(['rod', 'coil'], 'rod: a plain bar; coil: wire wound to a spring.', { default: 'rod' }),
  diameter: quantity(range('length', '1/8 in', '3 in'), 'Diameter of the rod, or of the coil’s wire.'),
  length: quantity(
    range('length', '1/2 in', '4 ft'),
    'Length from the plate to the tip; with two ends, from plate to plate.',
  ),
  standoff: quantity(range('length', '0 in', '2 ft'), 'How far along it from the plate the hand begins.', {
    default: ({ length }) => (length as number) / 3,
    says: 'a third of the length',
  }),
  ends: literals([1, 2], 'Ends that are fixed to the plate: 1, a knob; 2, a bow.'),
  coil: where(
    wound,
    quantity(range('length', '1/4 in', '6 in'), 'Outside diameter of the coil.', {
      default: ({ diameter }) => 5 * (diameter as number),
      says: '5 times its wire (estimate)',
    }),
  ),
  pitch: where(
    wound,
    quantity(range('length', '1/8 in', '6 in'), 'From turn to turn of the coil.', {
      default: ({ diameter }) => 2 * (diameter as number),
      says: 'twice its wire (estimate)',
    }),
  ),
  material: steel('Steel of the handle.'),
  emissivity: quantity(EMISSIVITY, 'Emissivity of the handle.', {
    default: ({ material }) => FINISHES[material === 'carbon' ? 'oxidised' : 'stainless'].emissivity,
    says: '0.79 carbon, 0.6 stainless',
    print: { bare: true },
  }),
  // half for a plate without end, less for a real one
  sees: quantity(range('share', '0', '0.5'), 'Share of its view that the hot plate takes.', {
    default: '0.4',
    guess: '0.2-0.5',
  }),
};

export const handle = block('A handle or knob: how hot a hand finds it.', HANDLE, (fields, around) =>
  readRows(HANDLE, fields, around, {}, ['kind', 'diameter', 'length', 'material', 'ends']),
);

export const trailer = block('The trailer the pit stands on. All positions are along it, measured from one mark.', {
  mass: quantity(range('mass', '10 lb', '20,000 lb'), 'Its own weight, empty.'),
  balance: quantity(POSITION, 'Where its own centre of gravity is.'),
  axle: quantity(POSITION, 'Where its axle is; the middle between two.'),
  hitch: quantity(POSITION, 'Where its coupler is.', {
    default: '0 in',
    says: '0 in, so that all is measured from the coupler',
  }),
  offset: quantity(POSITION, 'Where the firebox’s outer end stands.'),
  runs: choice(['to hitch', 'from hitch'], 'Which way the pit runs from its firebox: to the hitch or away from it.', {
    default: 'to hitch',
  }),
  axleRating: quantity(RATING, 'What its axles carry together.'),
  hitchRating: quantity(RATING, 'What coupler and hitch carry, the lesser.'),
});

export const load = block('Something carried along.', {
  name: text('What it is: wood box, table.'),
  kind: choice(['gear', 'wood', 'food'], 'What becomes of it: wood and food are gone after a cook.', {
    default: 'gear',
  }),
  mass: quantity(range('mass', '0.01 lb', '10,000 lb'), 'Weight.'),
  position: quantity(
    POSITION,
    'Where it is along the trailer; without a trailer along the pit, from the firebox’s outer end.',
  ),
});
