/** Shape and size of a lying part: given, or those of the tank that it is made of. */
import { TANKS, type TankName } from '../catalog/index.js';
import { format, formatPlate } from '../../units/index.js';
import { listed } from '../../units/listed.js';
import { HEADS } from '../heads.js';
import { pathText } from '../path.js';
import { range } from '../ranges.js';
import type { Fields } from '../reading.js';
import { choice, maybe, quantity } from './field.js';
import { optional, where } from './blocks.js';
import { type Soft } from './fieldType.js';
import { across, type SteelRow } from './shared.js';
import { mainSize, wallOf } from './walls.js';

const SECTION = range('length', '6 in', '6 ft');
const SECTION_EXAMPLES = ['24 in', '20 in pipe, standard wall', '610 mm'];
const LENGTH = range('length', '6 in', '20 ft');

const round = ({ shape }: Soft) => shape === 'round';
const square = ({ shape }: Soft) => shape === 'square';

/** @param longest of the page's slider [in] */
export const sectionRows = (longest: number) => ({
  shell: maybe(
    Object.keys(TANKS) as TankName[],
    'A tank or drum by its name in the trade, common practice, no source: it gives shape, diameter, length, plate and heads. Measure yours; what stands beside it counts instead.',
  ),
  shape: choice(['round', 'square'], 'round takes diameter; square takes width, and height if it differs.', {
    default: 'round',
    says: 'round of a shell',
    offer: { label: 'Shape', names: ['round', 'square'] },
  }),
  diameter: where(
    round,
    optional(
      quantity(SECTION, 'Outside diameter, or a pipe by its nominal size.', {
        examples: SECTION_EXAMPLES,
        pipe: true,
        slider: across('Diameter'),
      }),
    ),
  ),
  width: where(
    square,
    optional(
      quantity(SECTION, 'Outside width of a square part.', { examples: SECTION_EXAMPLES, slider: across('Width') }),
    ),
  ),
  height: where(
    square,
    quantity(SECTION, 'Outside height of a square part.', {
      default: ({ width }) => width as number,
      says: 'its width',
      examples: SECTION_EXAMPLES,
      slider: across('Height'),
    }),
  ),
  length: quantity(LENGTH, 'Outside length; with heads that are not flat between their seams.', {
    default: ({ shell }) => (shell === undefined ? NaN : TANKS[shell as TankName].length),
    says: 'a shell’s',
    slider: { label: 'Length', steps: [12, longest, 1] },
  }),
  heads: where(
    round,
    choice(HEADS, 'Ends of a round part. dished: crown of the diameter, knuckle 6 % of it; elliptical: 2:1.', {
      default: ({ shell }) => (shell === undefined ? 'flat' : TANKS[shell as TankName].heads),
      says: 'flat, or a shell’s',
    }),
  ),
  flange: where(
    round,
    quantity(range('length', '0 in', '6 in'), 'Straight flange of each head, beyond the seam.', { default: '0 in' }),
  ),
});

/** Width, height and plate of a lying part, from what its shape takes, or from the tank that it is made of. */
export function sectionOf(part: Fields, rows: ReturnType<typeof sectionRows> & { steel: SteelRow }) {
  const shell = rows.shell.read(part, 'shell', {}, {});
  const tank = shell === undefined ? undefined : TANKS[shell];
  const shape: 'round' | 'square' = part.raw('shape') === 'square' ? 'square' : 'round';
  const nameless = part.present && !part.has('shell');
  if (tank) tellTank(part, shell!);
  else if (!part.has('shape') && nameless) missing(part, 'shape', 'round, square');
  if (nameless && !part.has('length')) missing(part, 'length', 'a length (60 in)');
  const known = part.raw('shape') === shape || (tank !== undefined && !part.has('shape'));
  const steel = rows.steel.read(part, 'steel', {}, {});
  const ofTank = tank && shape === 'round' && !part.has('diameter') ? { si: tank.diameter } : undefined;
  const main = ofTank ?? mainSize(part, SECTION, { shape, known, what: 'part', second: 'height' });
  if (ofTank) part.reading.defaulted([...part.path, 'diameter']);
  const width = main?.si ?? NaN;
  const height = rows.height.read(part, 'height', { shape, width }, {}) ?? width;
  const plateOfTank = tank && !part.has('plate') && !('pipe' in (main ?? {})) ? tank.plate : undefined;
  if (plateOfTank !== undefined) part.reading.defaulted([...part.path, 'plate']);
  const plate = plateOfTank ?? wallOf(part, 'plate', main);
  return { shell, shape, diameter: undefined, width, height, plate, steel };
}

function missing(part: Fields, key: string, allowed: string): void {
  part.fault(key, { code: 'missing', message: 'is missing', allowed, value: null });
}

/** A tank's sizes are nobody's promise: which were taken, and which the file gives itself. */
function tellTank(part: Fields, shell: TankName): void {
  const { diameter, length, plate, heads } = TANKS[shell];
  if (part.raw('shape') === 'square') {
    part.fault('shell', { message: 'is round, and the shape is square', allowed: 'with shape: round, or left out' });
    return;
  }
  const sizes: [key: string, words: string][] = [
    ['diameter', `${format('length', diameter)} diameter`],
    ['length', `${format('length', length, 'shop', { unit: 'in' })} long${heads === 'flat' ? '' : ' between seams'}`],
    ['plate', `${formatPlate(plate)} plate`],
    ['heads', `${heads} heads`],
  ];
  const taken = sizes.filter(([key]) => !part.has(key)).map(([, words]) => words);
  const own = sizes.filter(([key]) => part.has(key)).map(([key]) => key);
  const beside = own.length === 0 ? '' : `; ${listed(own)} as the design gives, not as the tank`;
  if (taken.length === 0) return;
  part.reading.warnings.push({
    code: 'tank-by-name',
    message: `a ${shell} counts as ${taken.join(', ')} (common practice, no source)${beside}: makers differ, measure yours`,
    where: pathText([...part.path, 'shell']),
    value: null,
    limits: null,
  });
}
