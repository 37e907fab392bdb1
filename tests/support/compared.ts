import { assemble, type Comparison, type Option } from '../../src/study/compare/compare.js';
import { studyOption, USUAL_SETTINGS, type OptionStudy } from '../../src/study/compare/studyOption.js';

const known = new Map<string, OptionStudy>();

/** A design studied as usual, once for all tests of a worker: they look at studies and change none. */
export function studiedAsUsual({ design }: Pick<Option, 'design'>): OptionStudy {
  const key = JSON.stringify(design, (_, value: unknown) => (typeof value === 'number' ? String(value) : value));
  const study = known.get(key) ?? studyOption(design, USUAL_SETTINGS);
  known.set(key, study);
  return study;
}

/** Options compared as usual. */
export const comparedAsUsual = (options: readonly Option[], baseline = 0): Comparison =>
  assemble(options, options.map(studiedAsUsual), USUAL_SETTINGS, baseline);
