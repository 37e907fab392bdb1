/** Firebox, chamber, upright and what hangs on them: doors, insulation, finishes, vents, contents. */
import type { GaugeTable } from '../units.js';
import { DEFAULT_FINISH, FINISHES, INSULATION_ALIASES, INSULATIONS } from './catalog.js';
import type {
  Chamber,
  Content,
  Door,
  Firebox,
  HorizontalPart,
  Insulation,
  Intake,
  Opening,
  Upright,
} from './design.js';
import type { Fields } from './reading.js';
import { STATIONS } from './stations.js';

/** Door gaps of a part whose file gives none (estimate). */
const DOOR_GAPS = { firebox: '1 in^2', chamber: '2 in^2', upright: '1.5 in^2' } as const;

type PartBase = Omit<HorizontalPart, 'shape' | 'width' | 'height' | 'length'>;

function steelOf(part: Fields): GaugeTable {
  return part.choice('steel', ['carbon', 'stainless'], 'carbon');
}

function resolvePlate(part: Fields, pipeWall: number | undefined, diameterReads: boolean): number {
  if (part.has('plate'))
    return part.required('plate', 'plate', part.text('steel', '') === 'stainless' ? 'stainless' : 'carbon');
  if (pipeWall !== undefined) return pipeWall;
  if (diameterReads) {
    part.fault('plate', {
      code: 'missing',
      message: 'is missing',
      allowed:
        'a plate thickness (1/4 in, 11 ga, 6 mm), or a diameter that names a pipe with its wall (24 in pipe, standard wall)',
      value: null,
    });
  }
  return NaN;
}

function resolveBase(part: Fields, plate: number, doorGap: string): PartBase {
  return {
    plate,
    steel: steelOf(part),
    centre: part.required('centre', 'centre'),
    doorGap: part.optional('doorGap', 'doorGap', doorGap),
    ...(part.has('door') ? { door: resolveDoor(part.child('door'), plate) } : {}),
    ...resolveInsulation(part),
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
  const main = part.read(wanted[0], 'section');
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
  const plate = resolvePlate(part, shape === 'round' ? main?.pipe?.wall : undefined, main !== undefined);
  return { shape, width, height, length: part.required('length', 'length'), ...resolveBase(part, plate, doorGap) };
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
      plate: reverse.optional('plate', 'plate', horizontal.plate, horizontal.steel),
      turn: reverse.required('turn', 'turn'),
    },
  };
}

export function resolveUpright(part: Fields, hasChamber: boolean): Upright {
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
    ...resolveBase(part, resolvePlate(part, undefined, true), DOOR_GAPS.upright),
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

function resolveDoor(door: Fields, plate: number): Door {
  return {
    width: door.required('width', 'doorSide'),
    height: door.required('height', 'doorSide'),
    plate: door.optional('plate', 'plate', plate),
    lap: door.optional('lap', 'lap', '1/2 in'),
  };
}

export function resolveInsulation(part: Fields): { insulation?: Insulation } {
  if (!part.has('insulation')) return {};
  const fields = part.child('insulation');
  const written = fields.text('material', '');
  const material = INSULATION_ALIASES[written] ?? written;
  const insulation = {
    material,
    thickness: fields.required('thickness', 'insulation'),
    skin: fields.optional('skin', 'skin', 0),
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
    const read = intake.read('diameter', 'ventSide');
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
