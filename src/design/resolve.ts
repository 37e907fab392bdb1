/** A file's tree to a design in SI: quantities, defaults, catalogs. Shape is the schema's matter, sense is `sense.ts`'s. */
import { ENTRANCE_LOSS } from '../physics/friction.js';
import { netHeatAsFired } from '../physics/wood.js';
import { WOODS } from './catalog/index.js';
import type {
  Chamber,
  Design,
  Estimates,
  Fire,
  GaugeStation,
  Site,
  Stack,
  Throat,
  Upright,
  Wood,
  WoodComposition,
} from './design.js';
import type { Fields } from './reading.js';
import { pathText } from './source.js';
import { resolveHandle, resolveLoad, resolveTrailer } from './resolveCarry.js';
import { resolveCook, resolveSplits } from './resolveCook.js';
import { resolveLog } from './resolveLog.js';
import {
  resolveChamber,
  resolveFirebox,
  resolveInsulation,
  resolveOpening,
  resolveSurface,
  resolveUpright,
  steelOf,
  wallOf,
} from './resolveParts.js';

const GAUGES: readonly GaugeStation[] = ['fireEnd', 'middle', 'stackEnd', 'uprightLower', 'uprightUpper'];

/** The design a tree describes. With faults recorded in the reading, numbers of it may be NaN. */
export function resolveDesign(root: Fields): Design {
  const wood = resolveWood(root.child('wood'));
  const chamber = root.has('chamber') ? resolveChamber(root.child('chamber')) : undefined;
  const upright = root.has('upright') ? resolveUpright(root.child('upright'), chamber !== undefined) : undefined;
  return {
    schema: 1,
    name: root.text('name', ''),
    shop: root.text('shop', ''),
    job: root.text('job', ''),
    site: resolveSite(root.child('site')),
    wood,
    fire: resolveFire(root.child('fire'), wood),
    firebox: resolveFirebox(root.child('firebox')),
    ...(chamber ? { chamber } : {}),
    ...(upright ? { upright } : {}),
    throat: resolveThroat(root.child('throat')),
    stacks: root.list('stacks').map((fields) => resolveStack(fields, chamber, upright)),
    innerConvection: root.optional('innerConvection', 'innerConvection', 1),
    gauge: root.choice('gauge', GAUGES, chamber || !upright ? 'middle' : 'uprightUpper'),
    estimates: resolveEstimates(root.child('estimates')),
    ...(root.has('cook') ? { cook: resolveCook(root.child('cook')) } : {}),
    ...(root.has('handles') ? { handles: root.list('handles').map(resolveHandle) } : {}),
    ...(root.has('trailer') ? { trailer: resolveTrailer(root.child('trailer')) } : {}),
    ...(root.has('loads') ? { loads: root.list('loads').map(resolveLoad) } : {}),
    ...(root.has('log') ? { log: resolveLog(root.child('log')) } : {}),
  };
}

function resolveSite(site: Fields): Site {
  const air = site.optional('air', 'air', '70 °F');
  const pressure = site.child('windPressure');
  return {
    air,
    wind: site.optional('wind', 'wind', '5 mph'),
    altitude: site.optional('altitude', 'altitude', '0 ft'),
    humidity: site.optional('humidity', 'humidity', 0.5),
    surroundings: site.optional('surroundings', 'surroundings', air),
    sun: site.optional('sun', 'sun', 0),
    rain: site.optional('rain', 'rain', 0),
    windPressure: {
      intake: pressure.optional('intake', 'windPressure', 0),
      stack: pressure.optional('stack', 'windPressure', 0),
    },
  };
}

function resolveWood(wood: Fields): Wood {
  const kinds = Object.keys(WOODS);
  const kind = wood.choice('kind', kinds, 'generic');
  const moisture = wood.optional('moisture', 'moisture', 0.2);
  const heat = wood.optional('heat', 'woodHeat', netHeatAsFired(moisture));
  if (wood.has('composition'))
    return { kind, moisture, heat, composition: resolveComposition(wood.child('composition')) };
  const composition = { ...WOODS[kind].composition };
  for (const part of Object.keys(composition)) wood.child('composition').defaulted(part);
  return { kind, moisture, heat, composition };
}

function resolveComposition(parts: Fields): WoodComposition {
  const carbon = parts.required('carbon', 'composition');
  const hydrogen = parts.required('hydrogen', 'composition');
  const oxygen = parts.required('oxygen', 'composition');
  const nitrogen = parts.optional('nitrogen', 'composition', 0);
  const rest = 1 - carbon - hydrogen - oxygen - nitrogen;
  const ash = parts.optional('ash', 'composition', Math.max(0, rest));
  const sum = carbon + hydrogen + oxygen + nitrogen + ash;
  const percent = `${(100 * sum).toFixed(1)} %`;
  if (sum > 1.005 || sum < 0.995) {
    parts.reading.fault(parts.path, {
      message: `adds up to ${percent}`,
      allowed: 'shares that add up to 100 %, to half a percent',
    });
  }
  if (carbon < 0.3 || hydrogen > 0.15) {
    parts.reading.fault(parts.path, { message: 'is not wood', allowed: 'carbon from 30 %, hydrogen to 15 %' });
  }
  // Printed analyses are rounded; the half percent left is shared out so that no mass is lost in the flame.
  const share = (part: number): number => part / sum;
  return {
    carbon: share(carbon),
    hydrogen: share(hydrogen),
    oxygen: share(oxygen),
    nitrogen: share(nitrogen),
    ash: share(ash),
  };
}

function resolveFire(fire: Fields, wood: Wood): Fire {
  const read = fire.read('heat', 'fireHeat');
  let heat = read?.si ?? NaN;
  if (read?.wood) {
    heat = Number((read.si * wood.heat).toPrecision(12));
    if (!fire.within('heat', 'fireHeat', heat) && !(heat > 0)) heat = NaN;
  }
  return {
    heat,
    rise: fire.optional('rise', 'rise', '10 min'),
    radiant: fire.optional('radiant', 'radiant', 0.3),
    soot: fire.optional('soot', 'soot', 0.5),
    target: fire.required('target', 'target'),
    splits: resolveSplits(fire.child('splits')),
  };
}

function resolveThroat(throat: Fields): Throat {
  return { ...resolveOpening(throat), through: throat.choice('through', ['end', 'top'], 'end') };
}

function resolveStack(stack: Fields, chamber: Chamber | undefined, upright: Upright | undefined): Stack {
  const part = stack.choice('part', ['chamber', 'upright'], chamber ? 'chamber' : 'upright');
  if (!stack.has('part') && chamber && upright) {
    stack.fault('part', {
      code: 'missing',
      message: 'is missing: this pit has a chamber and an upright',
      allowed: 'chamber or upright',
      value: null,
    });
  }
  const steel = steelOf(stack);
  const standsOn = { chamber, upright }[part];
  if (!stack.has('steel') && standsOn?.steel === 'stainless') {
    stack.reading.warnings.push({
      code: 'stack-taken-as-carbon',
      message: `the stack counts as carbon steel, and its gauge as one of carbon sheet, though its ${part} is stainless: say which with steel: carbon or steel: stainless`,
      where: pathText(stack.path),
      value: null,
      limits: null,
    });
  }
  const diameter = stack.read('diameter', 'stackDiameter', { gauges: steel, pipe: true });
  return {
    part,
    diameter: diameter?.si ?? NaN,
    height: stack.required('height', 'stackHeight'),
    wall: wallOf(stack, 'wall', steel, diameter),
    steel,
    base: stack.required('base', 'height'),
    damper: stack.optional('damper', 'open', 1),
    entryLoss: stack.optional('entryLoss', 'entryLoss', ENTRANCE_LOSS),
    bendLoss: stack.optional('bendLoss', 'loss', 0),
    capLoss: stack.optional('capLoss', 'loss', 0),
    roughness: stack.optional('roughness', 'roughness', '0.1 mm'),
    ...resolveInsulation(stack, steel),
    ...resolveSurface(stack),
  };
}

function resolveEstimates(estimates: Fields): Estimates {
  return {
    oxygenUse: estimates.optional('oxygenUse', 'oxygenUse', 0.9),
    stemFill: estimates.optional('stemFill', 'stemFill', 0.4),
    insideEmissivity: estimates.optional('insideEmissivity', 'insideEmissivity', 0.95),
    entrainment: estimates.optional('entrainment', 'entrainment', 1),
    downflow: estimates.optional('downflow', 'downflow', 0.7),
  };
}
