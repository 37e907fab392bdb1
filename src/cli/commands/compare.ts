import { rangeOf } from '../../design/fields.js';
import { parseVariation, pathsIn, type Variation } from '../../design/vary.js';
import { assemble, type Comparison } from '../../study/compare/compare.js';
import type { Equal } from '../../study/compare/equalShape.js';
import { isShape, MOST_OPTIONS, optionsOf, type OptionRead } from '../../study/compare/options.js';
import { distinctLabels } from '../../study/compare/distinctLabels.js';
import { USUAL_SETTINGS, type OptionStudy, type StudySettings } from '../../study/compare/studyOption.js';
import { parsePrice, parseQuantity } from '../../units/index.js';
import { eachApart } from '../apart.js';
import { exit, Stop } from '../exit.js';
import { readText } from '../input.js';
import { readLoaded } from '../loadDesign.js';
import { filesBeside } from '../namedFile.js';
import { refuseClashes, refuseMixture } from '../output.js';
import { openOutputs, writeOutputs, type OutputOptions } from '../outputs.js';
import type { SpreadOptions } from '../spread.js';
import { progress } from '../stderr.js';

export interface CompareOptions extends SpreadOptions, OutputOptions {
  vary: string[];
  equal?: Equal;
  baseline: number;
  price?: string;
  door?: string;
}

/** Several designs, or one in several ways, held against each other: a table, what each buys and costs, pictures. */
export async function run(paths: string[], options: CompareOptions): Promise<void> {
  for (const path of paths) refuseClashes(path, { '--output': options.output, '--csv': options.csv });
  if (paths.filter((path) => path === '-').length > 1) {
    throw new Stop(exit.wrongUsage, "'-' stands for standard input, which holds one design.");
  }
  refuseMixture(options);
  const variations = readVariations(options);
  const settings = settingsOf(options);
  const read = await readOptions(paths, variations, options.equal);
  if (options.baseline > read.length) {
    throw new Stop(exit.wrongUsage, `--baseline ${options.baseline}: there are ${read.length} options.`);
  }
  const outputs = openOutputs(options);

  progress(`computing ${read.length} options`);
  const studies = await studiesOf(read, settings, options.workers);
  const comparison = withWarnings(assemble(read, studies, settings, options.baseline - 1), read);
  if (options.spread !== undefined) {
    const { comparisonSpreadOf } = await import('../spread.js');
    comparison.spread = await comparisonSpreadOf(comparison, { ...options, spread: options.spread });
  }

  await writeOutputs(outputs, options, {
    json: () => comparison,
    text: async (units) => (await import('../../report/text/compareText.js')).compareText(comparison, units),
    csv: async (units) => (await import('../../report/compareCsv.js')).compareCsv(comparison, units),
    charts: async () => (await import('../../charts/compareCharts.js')).compareCharts(comparison),
  });
  sayWhatCannotBe(comparison);
}

/** Every option estimated and its events followed. */
export function studiesOf(
  read: readonly OptionRead[],
  settings: StudySettings,
  workers?: number,
): Promise<OptionStudy[]> {
  const designs = read.map(({ design }) => design);
  return eachApart({ kind: 'studies', designs, settings }, designs.length, workers);
}

export function readVariations({ vary, equal }: Pick<CompareOptions, 'vary' | 'equal'>): Variation[] {
  const variations = vary.map((text) => {
    const read = parseVariation(text);
    if ('problem' in read) throw new Stop(exit.wrongUsage, `--vary '${text}' ${read.problem}.`);
    return read;
  });
  const paths = variations.flatMap(({ path }) => pathsIn(path));
  const twice = paths.find((path, i) => paths.indexOf(path) < i);
  if (twice !== undefined)
    throw new Stop(exit.wrongUsage, `${twice} is varied twice. Put its values into one --vary, with bars.`);
  const shaped = paths.some((path) => isShape({ path }));
  if (shaped && !equal) {
    throw new Stop(
      exit.wrongUsage,
      '--vary of a shape needs --equal volume, --equal length or --equal weight: what stays as it is decides the answer.',
    );
  }
  if (equal && !shaped)
    throw new Stop(exit.wrongUsage, '--equal goes with a --vary of firebox.shape or chamber.shape.');
  return variations;
}

function settingsOf({ price, door }: CompareOptions): StudySettings {
  const settings = { ...USUAL_SETTINGS };
  if (price !== undefined) {
    const read = parsePrice(price);
    if (!read.ok) throw new Stop(exit.wrongUsage, `--price '${price}' ${read.problem}.`);
    Object.assign(settings, { steelPrice: read.perKilogram, currency: read.currency });
  }
  if (door !== undefined) {
    const { min, max, low, high, kind } = rangeOf('cook.loading');
    const read = parseQuantity(kind, door);
    if (!read.ok) throw new Stop(exit.wrongUsage, `--door '${door}' ${read.problem}; allowed: ${read.allowed}.`);
    if (!(read.si >= min && read.si <= max)) {
      throw new Stop(exit.wrongUsage, `--door '${door}' is out of range; allowed: ${low} to ${high}.`);
    }
    settings.door_s = read.si;
  }
  return settings;
}

async function readOptions(paths: string[], variations: Variation[], equal?: Equal): Promise<OptionRead[]> {
  const count = paths.length * variations.reduce((product, { values }) => product * values.length, 1);
  if (count > MOST_OPTIONS) {
    throw new Stop(
      exit.wrongUsage,
      `that makes ${count} options, every value with every other; up to ${MOST_OPTIONS} are compared.`,
    );
  }
  const options: OptionRead[] = [];
  for (const path of paths) {
    const file = await readText(path);
    const { fileName } = file;
    const { design, warnings, text } = await readLoaded(file.text, fileName);
    if (variations.length === 0) {
      options.push({ label: design.name || fileName, changes: [], design, warnings });
      continue;
    }
    const made = await optionsOf(text, fileName, variations, equal, filesBeside(fileName));
    if ('faults' in made) throw new Stop(exit.wrongInput, `${fileName}:\n${made.faults.join('\n')}`);
    const prefix = paths.length > 1 ? `${design.name || fileName}, ` : '';
    options.push(...made.map((option) => ({ ...option, label: prefix + option.label })));
  }
  return distinctLabels(options);
}

/** What the reader has to say of a design goes before what the studies say. */
export function withWarnings(comparison: Comparison, read: readonly OptionRead[]): Comparison {
  comparison.options.forEach(({ result }, i) => result.warnings.unshift(...read[i].warnings));
  return comparison;
}

/** A comparison answers even where an option can't hold the target; with none that can there is nothing to compare. */
export function sayWhatCannotBe({ options }: Comparison): void {
  if (options.some(({ result }) => result.steady)) return;
  throw new Stop(exit.notPhysical, 'no fire holds the target in any of these options; the warnings say why.');
}
