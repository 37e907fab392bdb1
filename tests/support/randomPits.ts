import type { Design } from '../../src/design/design.js';
import { readDesign } from '../../src/design/read.js';

/** Pits drawn at random, each with a trait that a warm-up has to get right. */
const PITS = {
  overTwoStacks: `
schema: 1
name: "Upright over the firebox, two stacks"
firebox:
  { shape: round, diameter: 0.627 m, length: 0.77 m, plate: 1/8 in, centre: 0.865 m,
    intakes: [{ kind: pipe, area: 0.00839 m2, open: 0.505, centre: 0.709 m }] }
site: { air: 278 K, wind: 0.516 m/s, altitude: 335 m }
fire: { heat: 43200 W, target: 400 K, rise: 684 s }
wood: { kind: oak, moisture: 0.163 }
upright: { width: 0.584 m, depth: 0.691 m, height: 0.972 m, plate: 5/16 in, centre: 1.69 m, doorGap: 0.00127 m2 }
throat: { area: 0.0216 m2, centre: 1.18 m, through: top }
stacks:
  - { part: upright, diameter: 0.224 m, wall: 14 ga, height: 0.557 m, base: 2.05 m, damper: 0.853 }
  - { part: upright, diameter: 0.178 m, wall: 2 mm, height: 1.45 m, base: 2.02 m, damper: 0.573 }
gauge: uprightLower
`,
  overWrapped: `
schema: 1
name: Upright over a wrapped firebox
firebox:
  shape: square
  width: 0.566 m
  height: 0.617 m
  length: 0.506 m
  plate: 10 ga
  centre: 0.679 m
  insulation: { material: ceramic blanket, thickness: 0.0407 m, skin: 16 ga }
  doorGap: 0.00191 m2
  intakes:
    - { kind: pipe, area: 0.00271 m2, open: 0.743, centre: 0.879 m }
    - { kind: disc, area: 0.00595 m2, open: 0.456, centre: 0.773 m }
site: { air: 284 K, wind: 3.26 m/s, altitude: 1610 m }
fire: { heat: 39900 W, target: 381 K, rise: 571 s }
wood: { kind: generic, moisture: 0.22 }
upright: { width: 0.785 m, depth: 0.579 m, height: 0.988 m, plate: 1/4 in, centre: 1.53 m, steel: stainless }
throat: { area: 0.0186 m2, centre: 0.988 m, through: top }
stacks:
  - { part: upright, diameter: 0.216 m, wall: 2 mm, height: 1.27 m, base: 1.84 m }
  - { part: upright, diameter: 0.189 m, wall: 1/8 in, height: 0.885 m, base: 1.98 m, damper: 0.82 }
innerConvection: 1.13
gauge: uprightLower
`,
  overOneStack: `
schema: 1
name: "Upright over the firebox, stainless"
firebox:
  shape: square
  width: 0.569 m
  height: 0.568 m
  length: 0.521 m
  plate: 1/4 in
  centre: 0.625 m
  steel: stainless
  doorGap: 0.000638 m2
  intakes:
    - { kind: slide, area: 0.00864 m2, open: 0.824, centre: 0.534 m }
    - { kind: disc, area: 0.00855 m2, open: 0.614, centre: 0.664 m }
site: { air: 300 K, wind: 1.03 m/s, altitude: 0 m, windPressure: { intake: 0.579, stack: 0.0868 } }
fire: { heat: 32900 W, target: 378 K, rise: 915 s }
wood: { kind: maple, moisture: 0.127 }
upright:
  { width: 0.618 m, depth: 0.736 m, height: 1.24 m, plate: 5/16 in, centre: 1.54 m, steel: stainless,
    doorGap: 0.000776 m2 }
throat: { area: 0.0471 m2, centre: 0.909 m, through: top }
stacks: [{ part: upright, diameter: 0.185 m, wall: 1/8 in, height: 1.2 m, base: 2.05 m }]
gauge: uprightUpper
`,
  twoStacks: `
schema: 1
name: Offset with two stacks
firebox:
  shape: square
  width: 0.471 m
  height: 0.563 m
  length: 0.549 m
  plate: 1/8 in
  centre: 0.575 m
  insulation: { material: ceramic fibre, thickness: 0.0415 m }
  contents:
    - { name: b0, material: water, mass: 23.5 kg, area: 0.891 m2 }
    - { name: b1, material: stainless, mass: 9.04 kg, area: 0.483 m2 }
  doorGap: 0.000317 m2
  intakes:
    - { kind: disc, area: 0.00358 m2, open: 0.67, centre: 0.617 m }
    - { kind: slide, area: 0.0101 m2, open: 0.619, centre: 0.691 m }
site: { air: 264 K, wind: 1.63 m/s, altitude: 1360 m, windPressure: { intake: -0.399, stack: -0.172 } }
fire: { heat: 26900 W, target: 404 K, rise: 918 s }
wood: { kind: generic, moisture: 0.275 }
chamber:
  { shape: round, diameter: 0.612 m, length: 1.98 m, plate: 3/16 in, centre: 0.616 m,
    insulation: { material: ceramic blanket, thickness: 0.0215 m }, doorGap: 0.00182 m2 }
throat: { area: 0.102 m2, centre: 0.551 m }
stacks:
  - { part: chamber, diameter: 0.106 m, wall: 11 ga, height: 1.59 m, base: 0.831 m }
  - { part: chamber, diameter: 0.212 m, wall: 2 mm, height: 1.09 m, base: 0.843 m, damper: 0.864 }
gauge: middle
`,
  reverseTwoStacks: `
schema: 1
name: Reverse flow with two stacks
firebox:
  shape: round
  diameter: 0.561 m
  length: 0.737 m
  plate: 6 mm
  centre: 0.745 m
  doorGap: 0.00191 m2
  intakes:
    - { kind: disc, area: 0.0118 m2, open: 0.63, centre: 0.934 m }
    - { kind: pipe, area: 0.00604 m2, open: 0.473, centre: 0.581 m }
    - { kind: disc, area: 0.00225 m2, open: 0.802, centre: 0.595 m }
site: { air: 303 K, wind: 5.46 m/s, altitude: 0 m }
fire: { heat: 32800 W, target: 424 K, rise: 433 s }
wood: { kind: maple, moisture: 0.229 }
chamber:
  { shape: square, width: 0.825 m, height: 0.894 m, length: 0.976 m, plate: 5/16 in, centre: 1.05 m,
    insulation: { material: ceramic fibre, thickness: 0.0621 m, skin: 16 ga }, doorGap: 0.00153 m2,
    reverse: { height: 0.296 m, plate: 1/4 in, turn: 0.0506 m2 } }
throat: { area: 0.0202 m2, centre: 0.844 m }
stacks:
  - { part: chamber, diameter: 0.234 m, wall: 1/8 in, height: 1.08 m, base: 1.4 m }
  - { part: chamber, diameter: 0.135 m, wall: 2 mm, height: 1.6 m, base: 1.38 m, damper: 0.854, bendLoss: 1.24 }
gauge: middle
`,
  reverseUpright: `
schema: 1
name: Reverse flow into an upright
firebox:
  { shape: square, width: 0.491 m, height: 0.475 m, length: 0.816 m, plate: 7 ga, centre: 0.625 m,
    insulation: { material: ceramic blanket, thickness: 0.0129 m, skin: 16 ga }, doorGap: 0.00199 m2,
    intakes: [{ kind: slide, area: 0.00813 m2, open: 0.434, centre: 0.785 m }] }
site: { air: 296 K, wind: 0 m/s, altitude: 0 m }
fire: { heat: 44300 W, target: 373 K, rise: 1060 s }
wood: { kind: generic, moisture: 0.242 }
chamber:
  { shape: round, diameter: 0.745 m, length: 1.22 m, plate: 7 ga, centre: 0.793 m, doorGap: 0.000166 m2,
    reverse: { height: 0.293 m, plate: 3/16 in, turn: 0.0752 m2 } }
upright:
  { width: 0.744 m, depth: 0.721 m, height: 0.951 m, plate: 1/4 in, centre: 1.1 m,
    insulation: { material: ceramic blanket, thickness: 0.0419 m, skin: 16 ga },
    contents: [{ name: b0, material: stainless, mass: 5.37 kg, area: 0.394 m2 }], doorGap: 0.000829 m2,
    opening: { area: 0.0253 m2, centre: 0.873 m } }
throat: { area: 0.0293 m2, centre: 0.682 m }
stacks: [{ part: upright, diameter: 0.202 m, wall: 2 mm, height: 0.83 m, base: 1.57 m, damper: 0.97 }]
gauge: middle
`,
  reverseUprightLoaded: `
schema: 1
name: Reverse flow into a loaded upright
firebox:
  { shape: square, width: 0.662 m, height: 0.729 m, length: 0.459 m, plate: 3/16 in, centre: 0.697 m,
    insulation: { material: ceramic fibre, thickness: 0.0702 m },
    intakes: [{ kind: slide, area: 0.0112 m2, open: 0.515, centre: 0.886 m }] }
site: { air: 303 K, wind: 0 m/s, altitude: 879 m }
fire: { heat: 24500 W, target: 404 K, rise: 543 s }
wood: { kind: oak, moisture: 0.214 }
chamber:
  shape: square
  width: 0.636 m
  height: 0.761 m
  length: 0.901 m
  plate: 6 mm
  centre: 0.954 m
  contents:
    - { name: b0, material: food, mass: 20.2 kg, area: 0.771 m2 }
    - { name: b1, material: steel, mass: 16.7 kg, area: 0.963 m2 }
  doorGap: 0.000119 m2
  reverse: { height: 0.297 m, plate: 3/16 in, turn: 0.0706 m2 }
upright:
  { width: 0.445 m, depth: 0.632 m, height: 1.33 m, plate: 1/8 in, centre: 1.43 m,
    contents: [{ name: b0, material: steel, mass: 9.37 kg, area: 1.2 m2 }], doorGap: 0.000758 m2,
    opening: { area: 0.116 m2, centre: 1.01 m } }
throat: { area: 0.0478 m2, centre: 0.854 m }
stacks: [{ part: upright, diameter: 0.166 m, wall: 1/8 in, height: 0.855 m, base: 2.1 m, damper: 0.921 }]
gauge: fireEnd
`,
} as const;

export type PitName = keyof typeof PITS;

export function pitOf(name: PitName, change?: (design: Design) => void): Design {
  const { design, faults } = readDesign(PITS[name], { fileName: name });
  if (!design) throw new Error(JSON.stringify(faults));
  change?.(design);
  return design;
}
