/**
 * The shape of a design file: which fields exist, which are required, which names may stand in them.
 *
 * Shape only. Quantities are text here (`1/4 in`); `resolve` turns them into SI and checks ranges and sense, so that one run
 * reports every fault of a file. The JSON Schema that editors use is made from this.
 */
import * as z from 'zod';
import { FINISHES, INSULATION_ALIASES, INSULATIONS, WOODS } from './catalog/index.js';
import { handle, load, trailer } from './schemaCarry.js';
import { cook, splits } from './schemaCook.js';
import { plain, quantity } from './schemaFields.js';
import { log } from './schemaLog.js';
import { fitted } from './schemaFitted.js';
import { STATIONS } from './stations.js';

// Generated code is refused under a strict content policy, and costs more than it saves when a file is read once.
z.config({ jitless: true });

const finish = z.enum(Object.keys(FINISHES) as [string, ...string[]]).meta({
  description: 'Outside finish; it sets the emissivity and, for paint, a limit. Default: black paint.',
});
const emissivity = plain('emissivity', 'Outside emissivity, instead of the finish’s.');
const discharge = plain('discharge', 'Discharge coefficient (estimate, default 0.62, spread 0.55-0.70).');

const steel = (description: string) => z.enum(['carbon', 'stainless']).meta({ description }).optional();

const insulation = z
  .strictObject({
    material: z.enum([...Object.keys(INSULATIONS), ...Object.keys(INSULATION_ALIASES)] as [string, ...string[]]).meta({
      description: 'Insulation material.',
    }),
    thickness: quantity('insulation', 'Thickness; 0 in equals no insulation.'),
    skin: quantity('skin', 'Outer steel skin. Default: none.').optional(),
    skinSteel: steel('Steel of the skin; it says which gauge table is meant. Default: the steel of what it wraps.'),
  })
  .meta({ description: 'Insulation on the outside, with an outer steel skin if any.' });

const content = z
  .strictObject({
    name: z.string().max(200).meta({ description: 'What it is: racks, water pan, food.' }),
    material: z
      .enum(['steel', 'stainless', 'water', 'food'])
      .meta({ description: 'What it is made of. Default: steel.' })
      .optional(),
    mass: quantity('contentMass', 'Weight.'),
    area: quantity('contentArea', 'Surface that sees gas and walls, both sides.'),
    station: z.enum(STATIONS).meta({ description: 'Where it stands. Default: spread over the part.' }).optional(),
  })
  .meta({ description: 'A body inside the part: grates, racks, baffle, water pan, food.' });

const door = z
  .strictObject({
    width: quantity('doorSide', 'Width of the hole cut into the shell.'),
    height: quantity('doorSide', 'Height of that hole, along the shell.'),
    plate: quantity('plate', 'Plate of the door leaf. Default: the part’s plate.').optional(),
    lap: quantity('lap', 'By how much the leaf laps over on each side. Default: 1/2 in.').optional(),
  })
  .meta({ description: 'Door; without one the shell counts as whole.' });

const partFields = {
  plate: quantity('plate', 'Plate thickness; may be left out when the diameter names a pipe with its wall.').optional(),
  steel: steel('Steel of plate, door and reverse-flow plate; it says which gauge table is meant. Default: carbon.'),
  centre: quantity('centre', 'Height of its middle above the ground.'),
  doorGap: quantity('doorGap', 'Total leak area round its doors (estimate).').optional(),
  door: door.optional(),
  insulation: insulation.optional(),
  finish: finish.optional(),
  emissivity: emissivity.optional(),
  contents: z.array(content).max(50).optional(),
};

const horizontalFields = {
  shape: z
    .enum(['round', 'square'])
    .meta({ description: 'round takes diameter; square takes width, and height if it differs.' }),
  diameter: quantity('section', 'Outside diameter, or a pipe by its nominal size.').optional(),
  width: quantity('section', 'Outside width of a square part.').optional(),
  height: quantity('section', 'Outside height of a square part. Default: its width.').optional(),
  length: quantity('length', 'Outside length.'),
  ...partFields,
};

const intake = z
  .strictObject({
    kind: z.enum(['disc', 'slide', 'pipe']).meta({ description: 'Kind of vent. Default: disc.' }).optional(),
    count: z.number().meta({ description: 'How many of them. Default: 1.' }).optional(),
    diameter: quantity('ventSide', 'Diameter of one vent’s opening.').optional(),
    width: quantity('ventSide', 'Width of one vent’s opening.').optional(),
    height: quantity('ventSide', 'Height of one vent’s opening.').optional(),
    area: quantity('ventArea', 'Full open area of one vent.').optional(),
    open: plain('open', 'Open share. Default: 100 %.').optional(),
    centre: quantity('height', 'Height of its middle above the ground.'),
    discharge: discharge.optional(),
  })
  .meta({ description: 'Air intake: give diameter, or width and height, or area of one vent.' });

const openingFields = {
  area: quantity('openingArea', 'Free area.'),
  centre: quantity('height', 'Height of its middle above the ground.'),
  discharge: discharge.optional(),
};

const reverse = z
  .strictObject({
    height: quantity('plateHeight', 'Height of the plate above the chamber’s inside floor line.'),
    plate: quantity('plate', 'Plate thickness. Default: the chamber’s plate.').optional(),
    turn: quantity('turn', 'Free area where the gas turns at the far end.'),
  })
  .meta({
    description: 'Reverse flow: gas runs under a plate to the far end, turns, and comes back to a stack by the fire.',
  });

const stack = z
  .strictObject({
    part: z
      .enum(['chamber', 'upright'])
      .meta({ description: 'The part it stands on. Default: the only one there is.' })
      .optional(),
    diameter: quantity('stackDiameter', 'Outside diameter, or a pipe by its nominal size.'),
    height: quantity('stackHeight', 'Length of the stack above its base.'),
    wall: quantity('plate', 'Tube wall; may be left out when the diameter names a pipe with its wall.').optional(),
    steel: steel('Steel of the tube; it says which gauge table is meant. Default: carbon.'),
    base: quantity('height', 'Height of its base above the ground.'),
    damper: plain('open', 'Open share of its damper. Default: 100 %.').optional(),
    entryLoss: plain('entryLoss', 'Entry loss coefficient. Default: 0.5.').optional(),
    bendLoss: plain('loss', 'Loss coefficient of bends. Default: 0.').optional(),
    capLoss: plain('loss', 'Loss coefficient of a cap. Default: 0.').optional(),
    roughness: quantity('roughness', 'Wall roughness. Default: 0.1 mm.').optional(),
    insulation: insulation.optional(),
    finish: finish.optional(),
    emissivity: emissivity.optional(),
  })
  .meta({ description: 'A stack.' });

export const designSchema = z
  .strictObject({
    schema: z.literal(1).meta({ description: 'Number of this file format.' }),
    name: z.string().max(200).meta({ description: 'Name of the design.' }),
    shop: z.string().max(200).meta({ description: 'Shop’s name for a buyer’s sheet.' }).optional(),
    job: z.string().max(200).meta({ description: 'Job or customer number for a buyer’s sheet.' }).optional(),
    site: z
      .strictObject({
        air: quantity('air', 'Outdoor air temperature. Default: 70 °F.').optional(),
        wind: quantity('wind', 'Wind speed at the pit. Default: 5 mph.').optional(),
        altitude: quantity('altitude', 'Altitude above sea level. Default: 0 ft.').optional(),
        humidity: plain('humidity', 'Relative humidity. Default: 50 %.').optional(),
        surroundings: quantity(
          'surroundings',
          'Radiant temperature of the surroundings. Default: the air’s.',
        ).optional(),
        sun: quantity('sun', 'Sunshine on a level surface. Default: none.').optional(),
        rain: plain('rain', 'Share of the upward-facing outside kept wet by rain. Default: 0 %.').optional(),
        windPressure: z
          .strictObject({
            intake: plain('windPressure', 'Wind pressure coefficient on the intakes. Default: 0.').optional(),
            stack: plain('windPressure', 'Wind pressure coefficient on the stack tops. Default: 0.').optional(),
          })
          .optional(),
      })
      .meta({ description: 'Where and in what weather it stands.' })
      .optional(),
    wood: z
      .strictObject({
        kind: z
          .enum(Object.keys(WOODS) as [string, ...string[]])
          .meta({ description: 'Wood. Default: generic.' })
          .optional(),
        moisture: plain('moisture', 'Moisture, share of the wet weight. Default: 20 %.').optional(),
        heat: quantity('woodHeat', 'Net heat as burned, instead of the one that follows from moisture.').optional(),
        composition: z
          .strictObject({
            carbon: plain('composition', 'Carbon, share of dry wood.'),
            hydrogen: plain('composition', 'Hydrogen, share of dry wood.'),
            oxygen: plain('composition', 'Oxygen, share of dry wood.'),
            nitrogen: plain('composition', 'Nitrogen, share of dry wood. Default: 0.').optional(),
            ash: plain('composition', 'Ash, share of dry wood. Default: what the others leave.').optional(),
          })
          .meta({ description: 'Ultimate analysis, instead of the catalog’s.' })
          .optional(),
      })
      .meta({ description: 'The wood that is burned.' })
      .optional(),
    fire: z
      .strictObject({
        heat: quantity('fireHeat', 'Heat release of the assumed fire, or its wood per hour.'),
        rise: quantity('rise', 'Time constant of its rise (estimate, default 10 min).').optional(),
        radiant: plain(
          'radiant',
          'Share that leaves the fuel bed as radiation (estimate, default 0.30, spread 0.20-0.45).',
        ).optional(),
        soot: quantity(
          'soot',
          'Soot absorption in the firebox (estimate, default 0.5 per m, spread 0-1.2).',
        ).optional(),
        target: quantity('target', 'Cook temperature wanted on the thermometer.'),
        splits: splits.optional(),
      })
      .meta({ description: 'The fire and the temperature wanted.' }),
    firebox: z
      .strictObject({ ...horizontalFields, intakes: z.array(intake).min(1).max(20) })
      .meta({ description: 'The firebox. All sizes of parts are outside sizes.' }),
    chamber: z
      .strictObject({ ...horizontalFields, reverse: reverse.optional() })
      .meta({ description: 'The cooking chamber; left out when an upright stands alone over or beside its firebox.' })
      .optional(),
    throat: z
      .strictObject({
        ...openingFields,
        through: z
          .enum(['end', 'top'])
          .meta({ description: 'end: through an upright face; top: through the firebox roof. Default: end.' })
          .optional(),
      })
      .meta({ description: 'Opening from the firebox to the chamber, or to the upright when there is no chamber.' }),
    upright: z
      .strictObject({
        width: quantity('uprightSide', 'Outside width, across the chamber.'),
        depth: quantity('uprightSide', 'Outside depth, along the chamber. Default: its width.').optional(),
        height: quantity('uprightHeight', 'Outside height.'),
        ...partFields,
        opening: z.strictObject(openingFields).meta({ description: 'Opening from chamber to upright.' }).optional(),
      })
      .meta({ description: 'Upright box.' })
      .optional(),
    stacks: z.array(stack).min(1).max(8).meta({ description: 'The stacks.' }),
    innerConvection: plain(
      'innerConvection',
      'Factor on all inner convection (estimate, default 1, spread 0.8-2).',
    ).optional(),
    gauge: z
      .enum(['fireEnd', 'middle', 'stackEnd', 'uprightLower', 'uprightUpper'])
      .meta({ description: 'Where the cook’s thermometer sits. Default: middle; uprightUpper without a chamber.' })
      .optional(),
    estimates: z
      .strictObject({
        oxygenUse: plain('oxygenUse', 'Share of the oxygen a wood fire can use (estimate, default 0.90).').optional(),
        stemFill: plain(
          'stemFill',
          'Solid share of the thermometer stem (estimate, default 0.4, spread 0.2-1).',
        ).optional(),
        insideEmissivity: plain(
          'insideEmissivity',
          'Emissivity of the sooted inside (estimate, default 0.95).',
        ).optional(),
        entrainment: plain(
          'entrainment',
          'Factor on what hot gas takes in as it rises behind throat, turn and upright opening (estimate, default 1, spread 0.3-3).',
        ).optional(),
        downflow: plain(
          'downflow',
          'Factor on the gas that sinks along cold walls (estimate, default 0.7, spread 0.3-1.3).',
        ).optional(),
      })
      .meta({ description: 'What no correlation settles.' })
      .optional(),
    cook: cook.optional(),
    handles: z.array(handle).min(1).max(20).meta({ description: 'Handles and knobs.' }).optional(),
    trailer: trailer.optional(),
    loads: z.array(load).min(1).max(50).meta({ description: 'What else is carried.' }).optional(),
    log: log.optional(),
    fitted: fitted.optional(),
  })
  .meta({ title: 'pitwright design', description: 'A wood-fired pit, as a builder describes it.' });

/** The file's tree, once its shape is right. */
export type DesignFile = z.infer<typeof designSchema>;
