/**
 * A piece of tube or pipe as a builder writes it on a list: `6 in tube 11 ga`, `6 in x 4 in square tube 3/16 in, 50 in
 * long`.
 */
import { MOST_WALL } from './ranges.js';
import { inchText, nearestName, parseQuantity, siIn, type GaugeTable, type OtherUnits } from '../units/index.js';
import type { FaultCode } from './faults.js';

/** A tube that a stack may be cut from. */
export interface Tube {
  /** as it is called */
  name: string;
  /** fields of a stack that make it, as they are written */
  written: Readonly<Record<string, string>>;
  /** the same, outside sizes and wall [m] */
  size: { shape?: 'square'; diameter?: number; width?: number; depth?: number; wall: number };
  /** how long the piece is, where the list says [m] */
  long?: number;
}

type TubeRead =
  { ok: true; tube: Tube } | { ok: false; code: FaultCode; message: string; allowed?: string; nearest?: string };

/** What a fault of a tube shows. */
export const TUBE_FORM = '6 in tube 11 ga';
const ALLOWED =
  'size, tube or square tube, and wall (a comma inside [ ] would part them); or a pipe; how long behind it, if it is a piece';

const FORM =
  /^(.+?)(?:\s*(?:[x×]|by)\s*(\S.*?))?\s+(?:(round|square|rectangular|box)\s+)?(tube|tubing|pipe)\b\s*,?\s*(.*)$/i;
/** The length of a piece stands behind a comma, or behind a wall that ends with its unit. */
const LONG = /^(?:(.*?),|(.*?(?:ga|gauge|in|mm|"|wall|std|xs|schedule \d+)))?\s*(\d[^,]*?)\s+long$/i;

/** Least and greatest outside size, and longest piece [m]. */
const [NARROWEST, WIDEST, LONGEST] = [1, 24, 360].map((each) => siIn('length', each, 'in'));
export function readTube(text: string, steel: GaugeTable = 'carbon', otherUnits?: OtherUnits): TubeRead {
  const match = FORM.exec(text.trim());
  if (!match) {
    const size = parseQuantity('length', text.replace(/,.*$/, ''));
    const word = text.split(/[\s,]+/).find((each) => /^[a-z]{3,}$/i.test(each) && nearestName(each, ['tube', 'pipe']));
    const slip = word && nearestName(word, ['tube', 'pipe']);
    const nearest = slip ? text.replace(word, slip) : size.ok ? `${text.replace(/,.*$/, '')} tube 11 ga` : undefined;
    return { ok: false, code: 'not-a-quantity', message: 'is no tube and no pipe', allowed: ALLOWED, nearest };
  }
  const [, first, second, shape, what, rest] = match;
  const long = LONG.exec(rest);
  const wall = (long ? (long[1] ?? long[2] ?? '') : rest).trim();
  const isPipe = what.toLowerCase() === 'pipe';
  const isSquare = second !== undefined || (shape !== undefined && shape.toLowerCase() !== 'round');
  if (isPipe && isSquare) {
    return {
      ok: false,
      code: 'not-a-quantity',
      message: 'names a pipe that is not round',
      allowed: ALLOWED,
      nearest: text.replace(/pipe/i, 'tube'),
    };
  }
  const options = { gauges: steel, otherUnits };
  const pipe = `${first} pipe, ${wall === '' ? 'standard wall' : wall}`;
  const sizes = (isPipe ? [pipe] : [first, ...(second ? [second] : [])]).map((each) =>
    parseQuantity('length', each, { ...options, pipes: isPipe }),
  );
  const thick = isPipe ? undefined : parseQuantity('plate', wall, options);
  const length = long ? parseQuantity('length', long[3], { ...options, pipes: false }) : undefined;
  if (wall === '' && !isPipe) {
    const nearest =
      `${text.slice(0, text.length - rest.length).trim()} 11 ga${long ? `, ${long[3]} long` : ''}`.replace(
        ', 11',
        ' 11',
      );
    return { ok: false, code: 'missing', message: 'does not say how thick its wall is', allowed: ALLOWED, nearest };
  }
  for (const each of [...sizes, thick, length]) {
    if (each && !each.ok) {
      const { code, problem, allowed } = each;
      return { ok: false, code, message: `has a size that ${problem}`, allowed };
    }
  }
  const [a, b = a] = sizes.map((each) => (each.ok ? each.si : NaN));
  const [size] = sizes;
  const gauge = isPipe ? (size.ok ? size.pipe?.wall : undefined) : thick?.ok ? thick.si : undefined;
  const metres = length?.ok ? length.si : undefined;
  const low = Math.min(a, b);
  if (low < NARROWEST || Math.max(a, b) > WIDEST || (metres !== undefined && !(metres > 0 && metres <= LONGEST))) {
    return {
      ok: false,
      code: 'out-of-range',
      message: 'is no size of a stack',
      allowed: '1 in to 24 in wide, up to 30 ft long',
    };
  }
  if (gauge === undefined || 2 * gauge >= MOST_WALL * low) {
    return {
      ok: false,
      code: 'out-of-range',
      message: 'leaves hardly a bore',
      allowed: `a wall of less than ${inchText((MOST_WALL / 2) * low)}`,
    };
  }
  const piece = metres === undefined ? {} : { long: metres };
  if (isPipe) {
    return {
      ok: true,
      tube: { name: pipe, written: { diameter: pipe }, size: { diameter: a, wall: gauge }, ...piece },
    };
  }
  if (!isSquare) {
    const written = { diameter: first, wall };
    return {
      ok: true,
      tube: { name: `${first} tube, ${wall}`, written, size: { diameter: a, wall: gauge }, ...piece },
    };
  }
  const across = second ? `${first} x ${second}` : first;
  const written = { shape: 'square', width: first, ...(second ? { depth: second } : {}), wall };
  return {
    ok: true,
    tube: {
      name: `${across} square tube, ${wall}`,
      written,
      size: { shape: 'square', width: a, depth: b, wall: gauge },
      ...piece,
    },
  };
}
