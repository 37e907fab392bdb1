import { stepsOf } from './path.js';
import { SPECIMENS } from './specimens.js';

/**
 * The commented file that `new` writes: a plain 24 in offset, every common field explained, rarer ones ready to
 * uncomment.
 *
 * @param things paths of the blocks of which an example is put behind
 */
export function starterDesign(things: readonly string[] = []): string {
  if (things.length === 0) return STARTER;
  const lines = things.map((path) => {
    const steps = stepsOf(path);
    const where = steps.length > 1 ? `under ${steps[0]}` : 'in place of what stands above, if anything does';
    return `# ${steps[steps.length - 1]}: ${SPECIMENS[path]}   # ${where}`;
  });
  return `${STARTER}\n${lines.join('\n')}\n`;
}

const STARTER = `# A pit for pitwright. Change what differs on yours; lines that start with # do nothing.
#
# Every quantity carries its unit: 24 in, 2 ft 6 in, 24", 610 mm, 1/4 in, 11 ga, 24 in pipe, standard wall.
# All part sizes are OUTSIDE sizes. All heights are above the ground.
# Inside braces, leave the comma out of large numbers or put the value in quotes.
schema: 1
name: My pit
# shop: Name on the buyer's sheet
# job: Job number

site:
  air: 70 °F                       # outdoor air
  wind: 5 mph                      # at the pit, not at the airport
  # windAt: station                # the wind is a weather station's, brought to the height of the pit
  # terrain: suburb                # with that: open, suburb or city
  altitude: 500 ft
  # sun: 600 W/m2                  # on a level surface
  # rain: 50 %                     # share of the upward-facing steel kept wet

wood:
  kind: oak                        # oak, hickory, pecan, maple, cherry, apple, mesquite ... or generic
  moisture: 20 %                   # share of the wet weight; a year under cover is about 20 %
  # heat: 6,300 BTU/lb             # net heat as burned, when you know it better

fire:
  heat: 70,000 BTU/h               # the fire you light it with; or 11 lb wood/h; without it, all this box can burn
  rise: 10 min                     # how fast it comes up (estimate)
  target: 250 °F                   # what the thermometer should read
  # splits: { mass: 2.5 lb, thickness: 3 in, length: 14 in }   # what the cook lays on; or every: 45 min; door: 20 s
  # cook: { line: -15 °F, late: 5 min }   # when: this far below the target, so much later; intakes: [20 %, 100 %]
  # bed: 280 in^2                  # the bed of coals, as large as its grate; half of the box (estimate)

firebox:
  shape: round                     # round: diameter; square: width and height
  diameter: 24 in                  # or: 24 in pipe, standard wall (then plate may go)
  length: 24 in
  plate: 1/4 in
  centre: 30 in                    # height of its middle
  intakes:
    - { kind: disc, count: 2, diameter: 4 in, open: 100 %, centre: 26 in }
    # - { kind: slide, width: 8 in, height: 3 in, open: 50 %, centre: 22 in }
  doorGap: 1 in^2                  # all the leaks round its door, added up (estimate)
  # insulation: { material: ceramic fibre, thickness: 2 in, skin: 16 ga }
  # roof: { plate: 3/8 in }        # one face unlike the rest: roof, floor, sides, fireEnd, stackEnd; plate, insulation, finish
  # lining: { material: firebrick, thickness: 1-1/4 in, faces: [floor, sides] }    # inside the steel
  # shield: { plate: 16 ga, gap: 1 in, faces: [roof, sides] }                      # a sheet outside it, on spacers
  # door: { width: 16 in, height: 14 in, plate: 1/4 in, lap: 1/2 in }
  # grate: { height: 6 in, bars: 1/2 in, apart: 1/2 in }       # over the inside floor: coals off the steel, air from under it
  # ashDoor: { width: 10 in, height: 4 in, open: 25 %, gap: 0.3 in^2 }   # into the ash space under the grate

chamber:
  # shell: 250 gal tank            # a tank or drum by its name: gives shape, diameter, length, plate and heads; measure yours
  shape: round
  diameter: 24 in
  length: 60 in                    # with heads that stand out: between their seams
  # heads: dished                  # flat, dished (standard F&D), elliptical (2:1) or hemispherical
  # flange: 1-1/2 in               # straight flange of such heads
  plate: 1/4 in
  centre: 40 in
  doorGap: 2 in^2
  finish: black paint              # black paint, bare, oxidised, rusted, stainless ...
  # doors:                         # in place of one door: each with its own gap, along the chamber from the fire end
  #   - { name: left, width: 24 in, height: 14 in, along: 25 %, gap: 1 in^2 }
  #   - { name: right, width: 24 in, height: 14 in, along: 75 % }   # without a gap: its share of doorGap
  # grates:                        # without: one a little below the middle
  #   - { name: main, height: 39 in, mass: 20 lb }
  #   - { name: top, height: 45 in, from: 30 %, to: 100 % }    # how far it reaches along, from the fire end
  # thermometers:                  # besides a dial at 3/4 of the height in fireEnd, middle and stackEnd
  #   - { name: lid left, along: 25 %, height: 48 in }
  # contents:
  #   - { name: water pan, material: water, mass: 10 lb, area: 2 ft^2 }
  # plates: { height: 7 in, plate: 1/4 in, gaps: [4 in, 2 in, 2 in, 6 in] }   # under the grate, a gap behind each plate
  # deflector: { height: 7 in, plate: 1/4 in, length: 14 in }   # a plate over the throat, reaching so far along
  # reverse: { height: 6 in, plate: 3/16 in, turn: 90 in^2 }   # then the throat must be under the plate

throat: { area: 90 in^2, centre: 34 in }            # firebox to chamber

# upright:
#   width: 24 in
#   depth: 24 in
#   height: 40 in
#   plate: 1/4 in
#   centre: 48 in
#   doorGap: 1.5 in^2
#   racks: [36 in, 44 in, 52 in, 60 in]             # rack 1 is the lowest; without: two
#   opening: { area: 90 in^2, centre: 40 in }       # chamber to upright

stacks:
  - { part: chamber, diameter: 6 in, height: 36 in, wall: 11 ga, base: 42 in }
  # - { part: chamber, shape: square, width: 6 in, depth: 8 in, height: 36 in, wall: 11 ga, base: 42 in }
  # a damper: damper: 50 %, damperAt: top                      # top, base or a height above the ground
  # a box before the tube: gather: { width: 14 in, depth: 8 in, height: 12 in, plate: 3/16 in, mouth: 60 in^2 }

gauge: middle                      # what you steer by: the dial of fireEnd, middle or stackEnd (uprightLower, uprightUpper),
                                   # or the name of a grate, rack or thermometer
# use: { cooks: 50, lit: 8 h, coals: 500 °C }   # cooks a year, fire in each, steel where coals lie: for its scale
# cook:                            # a day to follow: light, reach the target, load, tend, let die
#   load: [{ name: brisket, mass: 14 lb, area: 2.5 ft^2, start: 40 °F }]
#   tend: 8 h                      # after loading
#   events: [{ at: 3 h, lasts: 30 s, door: true }, { at: 5 h, lasts: 10 min, wind: 20 mph }]
#   dieDown: 1 h
# innerConvection: 1.0             # factor on all inner convection (estimate, 0.8 to 1.5)

# prices: { steel: $1.20/lb, insulation: $4/ft^2, lining: $12/ft^2, wood: $0.25/lb }   # what an option costs, and when it is paid back
# size:                            # what the command size may choose
#   keep: [throat]                 # stays as drawn: intakes, throat, stack
#   stack: { least: 24 in, most: 48 in, over: lid, shapes: [round, square] }   # its top over the lid, over a head (6 ft) or the ground
#   onHand:                        # cut the stack from one of these
#     - 6 in tube 11 ga
#     - 6 in x 4 in square tube 3/16 in, 50 in long
#   heights: { base: [38 in, 48 in], throat: [32 in, 38 in] }   # what other heights would do
# options:                         # other ways to build it, for compare, report and page
#   - { name: 3/16 shell, changes: { all.plate: 3/16 in } }
#   - name: heavy box, wrapped
#     changes:                     # several fields at once; none takes one away
#       firebox.plate: 3/8 in
#       firebox.insulation: { material: ceramic fibre, thickness: 2 in, skin: 16 ga }
`;
