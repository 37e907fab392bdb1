import { rangeOf } from '../../design/fields.js';
import { AS_DRAWN } from '../../design/options.js';
import { parseVariation, pathsIn, type Variation } from '../../design/vary.js';
import { assemble, type Comparison } from '../../study/compare/compare.js';
import type { Equal } from '../../study/compare/equalShape.js';
import { isShape, MOST_OPTIONS, optionsOf, type OptionRead } from '../../study/compare/options.js';
import { distinctLabels } from '../../study/compare/distinctLabels.js';
import { USUAL_SETTINGS, type OptionStudy, type StudySettings } from '../../study/compare/studyOption.js';
import { parseQuantity } from '../../units/index.js';
import { listed } from '../../units/listed.js';
import { eachApart } from '../apart.js';
import { exit, Stop } from '../exit.js';
import { readText } from '../input.js';
import { readLoaded, type LoadedDesign } from '../loadDesign.js';
import { filesBeside } from '../namedFile.js';
import { refuseClashes, refuseMixture } from '../output.js';
import { openOutputs, writeOutputs, type OutputOptions } from '../outputs.js';
import type { SpreadOptions } from '../spread.js';
import { progress, tell } from '../stderr.js';

/** What varies, against what, and what it costs, as typed. */
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
  const read = withPrice(await readOptions(paths, variations, options.equal), options.price);
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

/** What `--vary` and `--equal` ask for. @throws Stop where a text is wrong, or names a field twice */
export function readVariations({ vary, equal }: Pick<CompareOptions, 'vary' | 'equal'>): Variation[] {
  const variations = vary.map((text) => {
    const read = parseVariation(text);
    if ('problem' in read) throw new Stop(exit.wrongUsage, `--vary '${text}' ${read.problem}`);
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

function settingsOf({ door }: CompareOptions): StudySettings {
  return door === undefined
    ? USUAL_SETTINGS
    : { ...USUAL_SETTINGS, door_s: quantityOf('--door', door, 'cook.loading').si };
}

/** What stands behind an option of the command, within the range of a design's field. */
function quantityOf(flag: string, text: string, field: string): { si: number; currency?: string } {
  const { min, max, low, high, kind } = rangeOf(field);
  const read = parseQuantity(kind, text);
  if (!read.ok) {
    const meant = read.nearest === undefined ? '' : `; did you mean '${read.nearest}'?`;
    throw new Stop(exit.wrongUsage, `${flag} '${text}' ${read.problem}; allowed: ${read.allowed}${meant}`);
  }
  if (!(read.si >= min && read.si <= max)) {
    throw new Stop(exit.wrongUsage, `${flag} '${text}' is out of range; allowed: ${low} to ${high}.`);
  }
  return read;
}

/** A price of steel given with the command takes the place of the design's. */
function withPrice(read: OptionRead[], price?: string): OptionRead[] {
  const given = price === undefined ? undefined : quantityOf('--price', price, 'prices.steel');
  const { si: steel, currency = '' } = given ?? { si: 0 };
  const priced = given
    ? read.map((each) => ({ ...each, design: { ...each.design, prices: { ...each.design.prices, steel, currency } } }))
    : read;
  const currencies = new Set([
    ...read.flatMap(({ design }) => design.prices?.currency ?? []),
    ...(given ? [currency] : []),
  ]);
  if (currencies.size > 1) {
    const named = listed([...currencies].map((each) => `'${each}'`));
    throw new Stop(exit.wrongInput, `prices are in ${named}: options are compared in one currency.`);
  }
  return priced;
}

async function readOptions(paths: string[], variations: Variation[], equal?: Equal): Promise<OptionRead[]> {
  const ways: OptionRead[] = [];
  for (const path of paths) {
    const file = await readText(path);
    const loaded = await readLoaded(file.text, file.fileName);
    const name = loaded.design.name || file.fileName;
    const made = await waysToBuild(loaded, file.fileName, variations, equal);
    const [first] = made;
    // a design without other ways to build it is called by its name
    if (made.length === 1 && first.changes.length === 0) ways.push({ ...first, label: name });
    else ways.push(...made.map((way) => ({ ...way, label: paths.length > 1 ? `${name}, ${way.label}` : way.label })));
  }
  refuseTooMany(ways.length);
  return distinctLabels(ways);
}

/** A design as drawn and its options or, in place of those, all that variations make of it. */
export async function waysToBuild(
  { design, warnings, text, options }: LoadedDesign,
  fileName: string,
  variations: readonly Variation[],
  equal?: Equal,
): Promise<OptionRead[]> {
  if (variations.length === 0) {
    const built = options.map(({ name, changes, also, ...read }) => ({
      label: name,
      changes: [...changes, ...also],
      design: read.design,
      warnings: read.warnings,
    }));
    return [{ label: AS_DRAWN, changes: [], design, warnings }, ...built];
  }
  refuseTooMany(variations.reduce((product, { values }) => product * values.length, 1));
  if (options.length > 0) tell(`pitwright: --vary takes the place of the options that ${fileName} names`);
  const made = await optionsOf(text, fileName, variations, equal, filesBeside(fileName));
  if ('faults' in made) throw new Stop(exit.wrongInput, `${fileName}:\n${made.faults.join('\n')}`);
  return made;
}

function refuseTooMany(count: number): void {
  if (count <= MOST_OPTIONS) return;
  throw new Stop(
    exit.wrongUsage,
    `that makes ${count} options, every value with every other; up to ${MOST_OPTIONS} are compared.`,
  );
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
