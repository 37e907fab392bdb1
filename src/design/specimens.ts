/**
 * One example of every block and list of a design file: what a fault of form shows, and what `new --with` adds. Doors,
 * insulation, faces, lining and contents are written alike in every part.
 */
export const SPECIMENS: Readonly<Record<string, string>> = {
  site: '{ air: 70 °F, wind: 5 mph, altitude: 500 ft }',
  'site.windPressure': '{ intake: 0.3, stack: -0.4 }',
  wood: '{ kind: oak, moisture: 20 % }',
  'wood.composition': '{ carbon: 50 %, hydrogen: 6 %, oxygen: 43.5 % }',
  fire: '{ heat: 11 lb wood/h, target: 250 °F }',
  'fire.splits': '{ mass: 2.5 lb, thickness: 3 in, length: 14 in }',
  'fire.cook': '{ line: -15 °F, look: 5 min, intakes: [20 %, 100 %] }',
  firebox:
    '{ shape: round, diameter: 24 in, length: 24 in, plate: 1/4 in, centre: 30 in, intakes: [{ diameter: 4 in, centre: 26 in }] }',
  'firebox.lining': '{ material: firebrick, thickness: 1-1/4 in, faces: [floor, sides] }',
  'firebox.shield': '{ plate: 16 ga, gap: 1 in, faces: [roof, sides] }',
  'firebox.intakes': '[{ kind: disc, count: 2, diameter: 4 in, open: 100 %, centre: 26 in }]',
  'firebox.grate': '{ height: 6 in, bars: 1/2 in, apart: 1/2 in }',
  'firebox.ashDoor': '{ width: 10 in, height: 4 in, open: 25 %, gap: 0.3 in^2 }',
  chamber: '{ shape: round, diameter: 24 in, length: 60 in, plate: 1/4 in, centre: 40 in }',
  'chamber.reverse': '{ height: 10 in, plate: 3/16 in, turn: 90 in^2 }',
  'chamber.plates': '{ height: 10 in, plate: 1/4 in, gaps: [4 in, 2 in, 2 in, 6 in] }',
  'chamber.deflector': '{ height: 10 in, plate: 1/4 in, length: 14 in }',
  'chamber.door': '{ width: 14 in, height: 12 in, plate: 1/4 in, lap: 1/2 in }',
  'chamber.doors':
    '[{ name: left, width: 24 in, height: 14 in, along: 25 %, gap: 1 in^2 }, { name: right, width: 24 in, height: 14 in, along: 75 % }]',
  'chamber.insulation': '{ material: ceramic fibre, thickness: 2 in, skin: 16 ga }',
  'chamber.roof': '{ plate: 3/8 in }',
  'chamber.floor': '{ insulation: none }',
  'chamber.sides': '{ plate: 3/16 in, finish: bare }',
  'chamber.fireEnd': '{ plate: 3/8 in }',
  'chamber.stackEnd': '{ insulation: { material: ceramic fibre, thickness: 1 in, skin: 16 ga } }',
  'chamber.contents': '[{ name: water pan, material: water, mass: 10 lb, area: 2 ft^2 }]',
  'chamber.grates': '[{ name: main, height: 40 in }, { name: top, height: 46 in, from: 30 %, mass: 12 lb }]',
  'chamber.thermometers': '[{ name: lid left, along: 25 %, height: 48 in, stem: 4 in }]',
  'upright.racks': '[34 in, 42 in, 50 in, 58 in]',
  throat: '{ area: 90 in^2, centre: 34 in }',
  upright: '{ width: 24 in, height: 40 in, plate: 1/4 in, centre: 48 in, opening: { area: 90 in^2, centre: 40 in } }',
  'upright.opening': '{ area: 90 in^2, centre: 40 in }',
  stacks: '[{ part: chamber, diameter: 6 in, height: 36 in, wall: 11 ga, base: 42 in }]',
  'stacks.gather': '{ width: 14 in, depth: 8 in, height: 12 in, plate: 3/16 in, mouth: 60 in^2 }',
  estimates: '{ stemFill: 0.4 }',
  cook: '{ load: [{ name: brisket, mass: 14 lb, area: 2.5 ft^2 }], tend: 8 h }',
  'cook.load': '[{ name: brisket, mass: 14 lb, area: 2.5 ft^2, start: 40 °F }]',
  'cook.events': '[{ at: 3 h, lasts: 30 s, door: true }]',
  use: '{ cooks: 50, lit: 8 h }',
  handles: '[{ name: firebox door, part: firebox, kind: coil, diameter: 3/8 in, length: 8 in }]',
  trailer: '{ mass: 900 lb, balance: 80 in, axle: 90 in, offset: 150 in, axleRating: 3500 lb, hitchRating: 2000 lb }',
  loads: '[{ name: splits, kind: wood, mass: 150 lb, position: 40 in }]',
  log: '{ accuracy: 2 °F }',
  prices: '{ steel: $1.20/lb, insulation: $4/ft^2, lining: $12/ft^2, wood: $0.25/lb }',
  size: '{ keep: [throat], stack: { least: 24 in, most: 48 in, shapes: [round, square] } }',
  'size.heights': '{ base: [38 in, 48 in], throat: [32 in, 38 in] }',
  'size.stack': '{ least: 24 in, most: 48 in, over: lid, shapes: [round, square] }',
  options: '[{ name: 3/16 shell, changes: { all.plate: 3/16 in } }]',
};

/** Fields that are no blocks, and are often written as one. */
const PLAIN_FORMS: Readonly<Record<string, string>> = {
  'stacks.damper': 'damper: 50 %, damperAt: base',
  'stacks.damperAt': 'damper: 50 %, damperAt: base',
  'chamber.heads': 'heads: dished, flange: 1-1/2 in',
  'chamber.shell': 'shell: 250 gal tank',
  'size.keep': 'keep: [intakes, throat]',
  'size.onHand': 'onHand: [6 in tube 11 ga, 6 in x 4 in square tube 11 ga, 6 in pipe]',
  'size.stack.shapes': 'shapes: [round, square]',
};

/** The example of a block or a list by its path, without the places of lists. */
export function specimenAt(path: string): string | undefined {
  const plain = path.replace(/\[\d+\]/g, '').replace(/^options\..*/, 'options');
  const [, part, rest] =
    /^(firebox|chamber|upright)\.(?:(?:roof|floor|sides|fireEnd|stackEnd|doors?)\.(?=insulation$))?(.*)$/.exec(plain) ??
    [];
  const alike = part ? `chamber.${rest}` : plain;
  return (
    SPECIMENS[plain] ?? SPECIMENS[alike] ?? (part ? SPECIMENS[`firebox.${rest}`] : undefined) ?? PLAIN_FORMS[alike]
  );
}
