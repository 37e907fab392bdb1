import { assemble, type Comparison } from '../../../src/study/compare/compare.js';
import { studyOption, USUAL_SETTINGS } from '../../../src/study/compare/studyOption.js';
import { designOf } from '../../report/support/reports.js';

const CARRIED = `
trailer: { mass: 780 lb, balance: 86 in, axle: 116 in, offset: 148 in, axleRating: 3500 lb, hitchRating: 350 lb }
handles: [{ name: chamber door, part: chamber, kind: coil, diameter: 3/8 in, length: 6 in, standoff: 2 in }]
prices: { steel: $1.20/lb, wood: $0.30/lb }
`;

/** An example on a trailer, with handles and prices, in some plates. */
export function carriedIn(name: string, plates: readonly string[]): Comparison {
  const options = plates.map((plate) => ({
    label: plate,
    changes: [{ path: 'all.plate', value: plate }],
    design: designOf(
      name,
      (text) => text.replace(/plate: .*/g, `plate: ${plate}`).replace(/options:[^]*$/, '') + CARRIED,
    ),
  }));
  const studies = options.map(({ design }) => studyOption(design, USUAL_SETTINGS));
  return assemble(options, studies, USUAL_SETTINGS);
}
