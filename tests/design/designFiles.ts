/** Design files for tests: the plain offset, and ways to change a line of it. */
import { readDesign, type ReadResult } from '../../src/design/read.js';
import type { Design } from '../../src/design/design.js';
import type { DesignFault } from '../../src/design/faults.js';

export const PLAIN = `schema: 1
name: Backyard 24
site:
  air: 70 °F
  wind: 5 mph
  altitude: 500 ft
wood:
  kind: oak
  moisture: 20 %
fire:
  heat: 70,000 BTU/h
  rise: 10 min
  target: 250 °F
firebox:
  shape: round
  diameter: 24 in
  length: 24 in
  plate: 1/4 in
  centre: 30 in
  intakes: [{ kind: disc, count: 2, diameter: 4 in, open: 100 %, centre: 26 in }]
  doorGap: 1.0 in^2
chamber:
  shape: round
  diameter: 24 in
  length: 60 in
  plate: 1/4 in
  centre: 40 in
  doorGap: 2.0 in^2
throat: { area: 90 in^2, centre: 34 in }
stacks: [{ part: chamber, diameter: 6 in, height: 36 in, wall: 11 ga, base: 42 in }]
gauge: middle
`;

/** Text that stands for the part of PLAIN's firebox block, and so on: first match of `from` becomes `to`. */
export function changed(...changes: [from: string, to: string][]): string {
  return changes.reduce((text, [from, to]) => {
    if (!text.includes(from)) throw new Error(`'${from}' is not in the text`);
    return text.replace(from, () => to);
  }, PLAIN);
}

/** The chamber's line of a key that several blocks have. */
export function inChamber(from: string, to: string): string {
  const at = PLAIN.indexOf('chamber:\n');
  const rest = PLAIN.slice(at);
  if (!rest.includes(from)) throw new Error(`'${from}' is not in the chamber`);
  return PLAIN.slice(0, at) + rest.replace(from, () => to);
}

export function read(text: string): ReadResult {
  return readDesign(text, { fileName: 'pit.yaml' });
}

export function designOf(text: string): Design {
  const result = read(text);
  if (result.faults) throw new Error(result.faults.map((each) => `${each.path}: ${each.message}`).join('\n'));
  return result.design;
}

export function faultsOf(text: string): DesignFault[] {
  const result = read(text);
  if (!result.faults) throw new Error('the text was read without a fault');
  return result.faults;
}

/** An upright at the far end of PLAIN, with its stack. */
export const UPRIGHT = PLAIN.replace(
  /stacks: .*\n/,
  `upright:
  width: 24 in
  depth: 24 in
  height: 40 in
  plate: 1/4 in
  centre: 48 in
  doorGap: 1.5 in^2
  opening: { area: 90 in^2, centre: 40 in }
stacks: [{ part: upright, diameter: 6 in, height: 30 in, wall: 11 ga, base: 67 in }]
`,
);

/** An upright on its own firebox. */
export const OVER = `schema: 1
name: Cabinet
fire: { heat: 8 kW, target: 240 °F }
firebox:
  shape: square
  width: 24 in
  height: 18 in
  length: 24 in
  plate: 1/4 in
  centre: 15 in
  intakes: [{ kind: disc, count: 2, diameter: 3 in, centre: 10 in }]
throat: { area: 60 in^2, centre: 24 in, through: top }
upright:
  width: 24 in
  depth: 24 in
  height: 48 in
  plate: 3/16 in
  centre: 48 in
stacks: [{ diameter: 4 in, height: 24 in, wall: 16 ga, base: 72 in }]
`;
