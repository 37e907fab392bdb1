/** Names that a builder may look for, each with the path of the field that does the job. */
const PART = '{part}';

const FIELD_FOR: readonly (readonly [names: string, field: string])[] = [
  ['waterpan drippan pan baffle', `${PART}.contents`],
  ['tuningplates tuningplate baffleplates convectionplate convectionplates', 'chamber.plates'],
  ['diverter heatbaffle throatbaffle throatplate deflectorplate', 'chamber.deflector'],
  ['grate grates cookinggrate', 'chamber.grates'],
  ['firegrate coalgrate logrestrack lograck', 'firebox.grate'],
  ['ashdoor ashpan ashpit ashpandoor cleanout', 'firebox.ashDoor'],
  ['rack racks shelf shelves', 'upright.racks'],
  ['firebrick firebricks brick bricks liner refractory castable board vermiculite', `${PART}.lining`],
  ['blanket wrap wrapping lagging wool jacket', `${PART}.insulation`],
  ['heatshield outershell doublewall airgap', `${PART}.shield`],
  ['top ceiling', `${PART}.roof`],
  ['bottom', `${PART}.floor`],
  ['side walls', `${PART}.sides`],
  ['front frontplate fireend', `${PART}.fireEnd`],
  ['back backplate farend stackend end ends', `${PART}.stackEnd`],
  ['gauge wall thickness wallthickness sheet', `${PART}.plate`],
  ['paint coating color colour', `${PART}.finish`],
  ['lid hatch', `${PART}.door`],
  ['lids hatches', `${PART}.doors`],
  ['gasket seal leak leaks gap', `${PART}.doorGap`],
  ['reverseflow baffleplate reverseplate', 'chamber.reverse'],
  ['butterfly butterflyvalve fluedamper stackdamper valve', 'stacks.damper'],
  ['vent vents airintake airintakes intake inlet inlets dampers pinwheel', 'firebox.intakes'],
  ['collector plenum plenumbox stackbox gatherbox collectorbox manifold breeching transition', 'stacks.gather'],
  ['stack chimney chimneys flue smokestack exhaust', 'stacks'],
  ['thermometer probe dial steerby', 'gauge'],
  ['thermometers probes dials', 'chamber.thermometers'],
  ['cookchamber cookingchamber smokebox barrel cooker main', 'chamber'],
  ['cabinet vertical warmer verticalchamber', 'upright'],
  ['ambient outdoor temperature airtemperature', 'site.air'],
  ['elevation', 'site.altitude'],
  ['cooktemperature temp setpoint cookat', 'fire.target'],
  ['burnrate power btu', 'fire.heat'],
  ['fuel species', 'wood.kind'],
  ['sizing constraints', 'size'],
  ['fixed stays', 'size.keep'],
  ['stock inventory yard onshelf instock', 'size.onHand'],
];

/** Words that builders use, each with the field that does the job. */
export const OTHER_NAMES: readonly (readonly [name: string, field: string])[] = FIELD_FOR.flatMap(([names, field]) =>
  names.split(' ').map((name) => [name, field] as const),
);

/** An upright has its four walls as one face. */
const UPRIGHT_END = /^upright\.(?:fireEnd|stackEnd)$/;

/**
 * The field that does what an unknown one was meant to.
 *
 * @param key as written; `waterPan`, `water_pan` and `Water pan` are one
 * @param part the part of the pit that it was looked for in
 * @returns its path
 */
export function fieldFor(key: string, part = 'chamber'): string | undefined {
  const plain = key.toLowerCase().replace(/[^a-z]/g, '');
  const found = OTHER_NAMES.find(([name]) => name === plain);
  return found && found[1].replace(PART, part).replace(UPRIGHT_END, 'upright.sides');
}
