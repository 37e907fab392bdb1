/** A stack. */
import { ENTRANCE_LOSS } from '../../physics/friction.js';
import { range } from '../ranges.js';
import { pathText } from '../path.js';
import { nearestName } from '../../units/index.js';
import { block, optional, readRows, where } from './blocks.js';
import { choice, maybe, quantity } from './field.js';
import { type Field, type Soft } from './fieldType.js';
import { gather } from './gather.js';
import { insulation, surface } from './cover.js';
import { mainSize, wallOf } from './walls.js';
import { HEIGHT, height, plate, SHARE, steel } from './shared.js';

const LOSS = range('number', '0', '50');
const SIZE = range('length', '1 in', '2 ft');

function isSquare({ shape }: Soft): boolean {
  return shape === 'square';
}

/** Where in the tube a damper sits. */
const damperAt: Field<'top' | 'base' | number> = {
  ...quantity(
    HEIGHT,
    'Where the damper sits: top, base, or its height above the ground. Gas at the base is hotter, so that it takes a little more draft there; below it the tube stands at the pressure of the pit, above it at that of the air. Default: top.',
    { examples: ['top', 'base', '60 in'], default: () => NaN },
  ),
  read: (fields, key) => {
    const raw = fields.raw(key);
    if (raw === undefined) fields.defaulted(key);
    if (raw === undefined || raw === 'top' || raw === 'base') return raw ?? 'top';
    if (typeof raw === 'string' && !/\d/.test(raw)) {
      fields.fault(key, {
        code: 'unknown-name',
        message: 'is no place in a stack',
        allowed: 'top, base, or a height above the ground (60 in)',
        nearest: nearestName(raw, ['top', 'base']),
      });
      return NaN;
    }
    return fields.required(key, HEIGHT);
  },
};

const STACK = {
  part: choice(['chamber', 'upright'], 'The part it stands on.', {
    default: (_, { chamber }) => (chamber ? 'chamber' : 'upright'),
    says: 'the only one there is',
  }),
  shape: maybe(
    ['round', 'square'],
    'round takes diameter; square takes width, and depth if it differs. Default: round.',
  ),
  diameter: where(
    (own) => !isSquare(own),
    optional(
      quantity(SIZE, 'Outside diameter, or a pipe by its nominal size.', {
        examples: ['6 in', '6 in pipe, standard wall'],
        pipe: true,
        slider: { label: ['Diameter', 'Stack # diameter'], steps: [3, 14, 0.5] },
      }),
    ),
  ),
  width: where(
    isSquare,
    optional(
      quantity(SIZE, 'Outside width of a square stack, across the pit.', {
        slider: { label: ['Width', 'Stack # width'], steps: [3, 14, 0.5] },
      }),
    ),
  ),
  depth: where(
    isSquare,
    quantity(SIZE, 'Outside depth of a square stack, along the pit.', {
      default: ({ width }) => width as number,
      says: 'its width',
      slider: { label: ['Depth', 'Stack # depth'], steps: [3, 14, 0.5] },
    }),
  ),
  height: quantity(range('length', '1 in', '30 ft'), 'Length of the stack above its base.', {
    slider: { label: ['Height', 'Stack # height'], steps: [6, 120, 1] },
  }),
  wall: optional(plate('Tube wall; may be left out when the diameter names a pipe with its wall.')),
  steel: steel('Steel of the tube; it says which gauge table is meant.'),
  base: height('Height of its base above the ground.', ['Foot of the stack', 'Foot of stack #']),
  damper: quantity(SHARE, 'Open share of its damper.', { default: '100 %' }),
  damperAt,
  // an entry of no loss at all would let infinite flow in
  entryLoss: quantity(range('number', '0.02', '50'), 'Entry loss coefficient.', {
    default: String(ENTRANCE_LOSS),
    print: { bare: true },
  }),
  bendLoss: quantity(LOSS, 'Loss coefficient of bends.', { default: '0', print: { bare: true } }),
  capLoss: quantity(LOSS, 'Loss coefficient of a cap.', { default: '0', print: { bare: true } }),
  roughness: quantity(range('length', '0 mm', '3 mm'), 'Wall roughness.', {
    default: '0.1 mm',
    print: { digits: 2, shop: 'in', si: 'mm' },
  }),
  gather,
  insulation,
  ...surface('stack'),
};

export const stack = block('A stack.', STACK, (stack, around) => {
  const { chamber, upright } = around as Record<string, Soft | undefined>;
  const part = STACK.part.read(stack, 'part', {}, around);
  if (!stack.has('part') && chamber && upright) {
    stack.fault('part', {
      code: 'missing',
      message: 'is missing: this pit has a chamber and an upright',
      allowed: 'chamber or upright',
      value: null,
    });
  }
  if (!stack.has('steel') && { chamber, upright }[part]?.steel === 'stainless') {
    stack.reading.warnings.push({
      code: 'stack-taken-as-carbon',
      message: `the stack counts as carbon steel, and its gauge as one of carbon sheet, though its ${part} is stainless: say which with steel: carbon or steel: stainless`,
      where: pathText(stack.path),
      value: null,
      limits: null,
    });
  }
  const shape = stack.raw('shape') === 'square' ? 'square' : 'round';
  const known = stack.present && (!stack.has('shape') || stack.raw('shape') === shape);
  const main = mainSize(stack, SIZE, { shape, known, what: 'stack', second: 'depth' });
  const size = main?.si ?? NaN;
  return readRows(STACK, stack, around, {
    part,
    diameter: shape === 'round' ? size : undefined,
    width: shape === 'square' ? size : undefined,
    wall: wallOf(stack, 'wall', main),
  });
});
