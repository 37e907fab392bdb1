/** Firebox, chamber, upright and what hangs on them: doors, insulation, finishes, vents, contents. */
import { format } from '../units/index.js';
import { DEFAULT_FINISH, FINISHES, INSULATION_ALIASES, INSULATIONS } from './catalog/index.js';
import type {
  Chamber,
  Content,
  Door,
  Firebox,
  HorizontalPart,
  Insulation,
  Intake,
  Opening,
  Steel,
  Upright,
} from './design.js';
import type { Fields, QuantityRead } from './reading.js';
import { pathText } from './source.js';
import { STATIONS } from './stations.js';

/** Door gaps of a part whose file gives none (estimate). */
const DOOR_GAPS = { firebox: '1 in^2', chamber: '2 in^2', upright: '1.5 in^2' } as const;

type PartBase = Omit<HorizontalPart, 'shape' | 'width' | 'height' | 'length'>;

/** Steel of a part or a stack: it says which table its gauges are read from. */
export function steelOf(part: Fields): Steel {
  return part.choice('steel', ['carbon', 'stainless'], 'carbon');
}

/** Walls of two ways to write them that differ by no more than this share are the same: 9/16 in and 0.562 in. */
const SAME_WALL = 0.01;

/** Thickness from the part's own field, or from the wall of the pipe that its diameter names. NaN where neither says. */
export function wallOf(part: Fields, key: 'plate' | 'wall', gauges: Steel, diameter: QuantityRead | undefined): number {
  const pipeWall = diameter?.pipe?.wall;
  if (part.has(key)) {
    const own = part.required(key, 'plate', { gauges });
    if (pipeWall !== undefined && Math.abs(own - pipeWall) > SAME_WALL * pipeWall) {
      const path = [...part.path, key];
      part.reading.warnings.push({
        code: 'wall-not-of-pipe',
        message: `${format('plate', own)} is taken, and not the ${format('plate', pipeWall)} wall of the pipe that the diameter names: leave one of them out`,
        where: pathText(path),
        value: own,
        limits: { low: pipeWall, high: pipeWall, unit: 'm' },
      });
    }
    return own;
  }
  if (pipeWall !== undefined) return pipeWall;
  if (diameter) {
    const [what, pipe] = key === 'plate' ? ['plate thickness', '24 in'] : ['wall', '6 in'];
    part.fault(key, {
      code: 'missing',
      message: 'is missing',
      allowed: `a ${what} (1/4 in, 11 ga, 6 mm), or a diameter that names a pipe with its wall (${pipe} pipe, standard wall)`,
      value: null,
    });
  }
  return NaN;
}

function resolveBase(part: Fields, plate: number, steel: Steel, doorGap: string): PartBase {
  return {
    plate,
    steel,
    centre: part.required('centre', 'centre'),
    doorGap: part.optional('doorGap', 'doorGap', doorGap),
    ...(part.has('door') ? { door: resolveDoor(part.child('door'), plate, steel) } : {}),
    ...resolveInsulation(part, steel),
    ...resolveSurface(part),
    contents: part.list('contents').map(resolveContent),
  };
}

function resolveHorizontal(part: Fields, doorGap: string): HorizontalPart {
  const shape = part.text('shape', '') === 'square' ? 'square' : 'round';
  const known = part.text('shape', '') === shape;
  const wanted = shape === 'round' ? ['diameter'] : ['width', 'height'];
  const unwanted = shape === 'round' ? ['width', 'height'] : ['diameter'];
  for (const key of unwanted) {
    if (known && part.has(key)) {
      part.fault(key, {
        code: 'unknown-key',
        message: `does not belong to a ${shape} part`,
        allowed: wanted.join(' and '),
        atKey: true,
      });
    }
  }
  const steel = steelOf(part);
  const main = part.read(wanted[0], 'section', shape === 'round' ? { gauges: steel, pipe: true } : {});
  if (known && !part.has(wanted[0])) {
    part.fault(wanted[0], {
      code: 'missing',
      message: `is missing: a ${shape} part needs it`,
      allowed: 'a length (24 in)',
      value: null,
    });
  }
  const width = main?.si ?? NaN;
  const height = shape === 'round' ? width : part.optional('height', 'section', width);
  const plate = wallOf(part, 'plate', steel, main);
  const length = part.required('length', 'length');
  return { shape, width, height, length, ...resolveBase(part, plate, steel, doorGap) };
}

export function resolveFirebox(part: Fields): Firebox {
  return { ...resolveHorizontal(part, DOOR_GAPS.firebox), intakes: part.list('intakes').map(resolveIntake) };
}

export function resolveChamber(part: Fields): Chamber {
  const horizontal = resolveHorizontal(part, DOOR_GAPS.chamber);
  if (!part.has('reverse')) return horizontal;
  const reverse = part.child('reverse');
  return {
    ...horizontal,
    reverse: {
      height: reverse.required('height', 'plateHeight'),
      plate: reverse.optional('plate', 'plate', horizontal.plate, { gauges: horizontal.steel }),
      turn: reverse.required('turn', 'turn'),
    },
  };
}

export function resolveUpright(part: Fields, hasChamber: boolean): Upright {
  const steel = steelOf(part);
  const width = part.required('width', 'uprightSide');
  const opening = part.has('opening');
  if (hasChamber && !opening) {
    part.fault('opening', {
      code: 'missing',
      message: 'is missing: gas must get from the chamber into the upright',
      allowed: '{ area: 90 in^2, centre: 40 in }',
      value: null,
    });
  } else if (!hasChamber && opening) {
    part.fault('opening', {
      message: 'has no chamber to lead from; the throat joins the firebox to the upright',
      allowed: 'leave it out, or give a chamber',
      atKey: true,
    });
  }
  return {
    width,
    depth: part.optional('depth', 'uprightSide', width),
    height: part.required('height', 'uprightHeight'),
    ...resolveBase(part, wallOf(part, 'plate', steel, { si: width }), steel, DOOR_GAPS.upright),
    ...(hasChamber && opening ? { opening: resolveOpening(part.child('opening')) } : {}),
  };
}

export function resolveOpening(opening: Fields): Opening {
  return {
    area: opening.required('area', 'openingArea'),
    centre: opening.required('centre', 'height'),
    discharge: opening.optional('discharge', 'discharge', 0.62),
  };
}

function resolveDoor(door: Fields, plate: number, gauges: Steel): Door {
  return {
    width: door.required('width', 'doorSide'),
    height: door.required('height', 'doorSide'),
    plate: door.optional('plate', 'plate', plate, { gauges }),
    lap: door.optional('lap', 'lap', '1/2 in'),
  };
}

export function resolveInsulation(part: Fields, steel: Steel): { insulation?: Insulation } {
  if (!part.has('insulation')) return {};
  const fields = part.child('insulation');
  const written = fields.text('material', '');
  const material = INSULATION_ALIASES[written] ?? written;
  const skinSteel = (['carbon', 'stainless'] as const).find((each) => each === fields.text('skinSteel', ''));
  const insulation = {
    material,
    thickness: fields.required('thickness', 'insulation'),
    skin: fields.optional('skin', 'skin', 0, { gauges: skinSteel ?? steel }),
    ...(skinSteel ? { skinSteel } : {}),
  };
  const row = Object.hasOwn(INSULATIONS, material) ? INSULATIONS[material] : undefined;
  if (row && row.knownTo < 400) {
    part.reading.warnings.push({
      code: 'insulation-hot-values-estimated',
      message: `The heat flow through hot ${material} is an estimate: no hot values were found in print. Ceramic fibre has them.`,
      where: fields.path.join('.'),
      value: null,
      limits: { high: row.knownTo, unit: 'K', source: row.source },
    });
  }
  return { insulation };
}

export function resolveSurface(part: Fields): { finish: string; emissivity: number } {
  const finish = part.choice('finish', Object.keys(FINISHES), DEFAULT_FINISH);
  return { finish, emissivity: part.optional('emissivity', 'emissivity', FINISHES[finish].emissivity) };
}

function resolveContent(content: Fields): Content {
  const station = STATIONS.find((each) => each === content.text('station', ''));
  return {
    name: content.text('name', ''),
    material: content.choice('material', ['steel', 'stainless', 'water', 'food'], 'steel'),
    mass: content.required('mass', 'contentMass'),
    area: content.required('area', 'contentArea'),
    ...(station ? { station } : {}),
  };
}

function resolveIntake(intake: Fields): Intake {
  const count = intake.optional('count', 'ventCount', 1);
  if (Number.isFinite(count) && !Number.isInteger(count)) {
    intake.fault('count', { code: 'wrong-type', message: 'is no whole number', allowed: 'a whole number of vents' });
  }
  return {
    kind: intake.choice('kind', ['disc', 'slide', 'pipe'], 'disc'),
    count,
    area: ventArea(intake),
    open: intake.optional('open', 'open', 1),
    centre: intake.required('centre', 'height'),
    discharge: intake.optional('discharge', 'discharge', 0.62),
  };
}

/** Full open area of one vent, from the one set of sizes that is given. */
function ventArea(intake: Fields): number {
  const given = [
    intake.has('diameter') && 'diameter',
    (intake.has('width') || intake.has('height')) && 'width and height',
    intake.has('area') && 'area',
  ].filter((each): each is string => typeof each === 'string');
  if (given.length !== 1) {
    intake.reading.fault(intake.path, {
      code: given.length === 0 ? 'missing' : 'cannot-be-built',
      message: given.length === 0 ? 'has no size' : `has two sizes: ${given.join(', ')}`,
      allowed: 'diameter, or width and height, or area',
      value: null,
    });
    return NaN;
  }
  if (given[0] === 'area') return intake.required('area', 'ventArea');
  if (given[0] === 'diameter') {
    const read = intake.read('diameter', 'ventSide', { pipe: true });
    if (read?.pipe && read.pipe.wall === undefined) {
      intake.fault('diameter', {
        message: 'names a pipe without its wall, so that its bore is not known',
        allowed: `${read.pipe.nominal} in pipe, standard wall`,
      });
    }
    const bore = (read?.si ?? NaN) - 2 * (read?.pipe?.wall ?? 0);
    return (Math.PI / 4) * bore ** 2;
  }
  for (const key of ['width', 'height']) {
    if (!intake.has(key)) {
      intake.fault(key, {
        code: 'missing',
        message: 'is missing: a slide needs width and height',
        allowed: 'a length (3 in)',
        value: null,
      });
    }
  }
  return intake.required('width', 'ventSide') * intake.required('height', 'ventSide');
}
