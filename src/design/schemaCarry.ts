/** Shape of what a pit is touched by and carried on in a design file: handles, trailer, loads. */
import * as z from 'zod';
import { plain, quantity } from './schemaFields.js';
import { STATIONS } from './stations.js';

export const handle = z
  .strictObject({
    name: z.string().max(200).meta({ description: 'Which one: firebox door, damper.' }),
    part: z.enum(['firebox', 'chamber', 'upright']).meta({ description: 'The part it is fixed to.' }),
    station: z
      .enum(STATIONS)
      .meta({ description: 'Where on that part. Default: the hottest of its stations.' })
      .optional(),
    kind: z
      .enum(['rod', 'coil'])
      .meta({ description: 'rod: a plain bar; coil: wire wound to a spring. Default: rod.' })
      .optional(),
    diameter: quantity('handleDiameter', 'Diameter of the rod, or of the coil’s wire.'),
    length: quantity('handleLength', 'Length from the plate to the tip; with two ends, from plate to plate.'),
    standoff: quantity(
      'standoff',
      'How far along it from the plate the hand begins. Default: a third of the length.',
    ).optional(),
    ends: z
      .literal([1, 2])
      .meta({ description: 'Ends that are fixed to the plate: 1, a knob; 2, a bow. Default: 1.' })
      .optional(),
    coil: quantity('coil', 'Outside diameter of the coil. Default: 5 times its wire (estimate).').optional(),
    pitch: quantity('pitch', 'From turn to turn of the coil. Default: twice its wire (estimate).').optional(),
    material: z.enum(['carbon', 'stainless']).meta({ description: 'Steel of the handle. Default: carbon.' }).optional(),
    emissivity: plain('emissivity', 'Emissivity of the handle. Default: 0.79 carbon, 0.6 stainless.').optional(),
    sees: plain(
      'sees',
      'Share of its view that the hot plate takes (estimate, default 0.4, spread 0.2-0.5).',
    ).optional(),
  })
  .meta({ description: 'A handle or knob: how hot a hand finds it.' });

export const trailer = z
  .strictObject({
    mass: quantity('trailerMass', 'Its own weight, empty.'),
    balance: quantity('position', 'Where its own centre of gravity is.'),
    axle: quantity('position', 'Where its axle is; the middle between two.'),
    hitch: quantity(
      'position',
      'Where its coupler is. Default: 0 in, so that all is measured from the coupler.',
    ).optional(),
    offset: quantity('position', 'Where the firebox’s outer end stands.'),
    runs: z
      .enum(['to hitch', 'from hitch'])
      .meta({
        description: 'Which way the pit runs from its firebox: to the hitch or away from it. Default: to hitch.',
      })
      .optional(),
    axleRating: quantity('rating', 'What its axles carry together.'),
    hitchRating: quantity('rating', 'What coupler and hitch carry, the lesser.'),
  })
  .meta({ description: 'The trailer the pit stands on. All positions are along it, measured from one mark.' });

export const load = z
  .strictObject({
    name: z.string().max(200).meta({ description: 'What it is: wood box, table.' }),
    mass: quantity('loadMass', 'Weight.'),
    position: quantity(
      'position',
      'Where it is along the trailer; without a trailer along the pit, from the firebox’s outer end.',
    ),
  })
  .meta({ description: 'Something carried along.' });
