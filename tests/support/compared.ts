import { assemble, type Comparison, type Option } from '../../src/study/compare/compare.js';
import { studyOption, USUAL_SETTINGS, type OptionStudy } from '../../src/study/compare/studyOption.js';

const known = new Map<string, OptionStudy>();

/** Options compared as usual. A design is studied once for all tests of a worker: they look at studies and change none. */
export function comparedAsUsual(options: readonly Option[], baseline = 0): Comparison {
  const studies = options.map(({ design }) => {
    const key = JSON.stringify(design, (_, value: unknown) => (typeof value === 'number' ? String(value) : value));
    const study = known.get(key) ?? studyOption(design, USUAL_SETTINGS);
    known.set(key, study);
    return study;
  });
  return assemble(options, studies, USUAL_SETTINGS, baseline);
}
