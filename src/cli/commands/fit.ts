import { createHash } from 'node:crypto';
import { basename } from 'node:path';
import type { Design } from '../../design/design.js';
import { sameLog } from '../../design/fitted.js';
import { PROBE_ACCURACY } from '../../design/fields/log.js';
import type { CookLog } from '../../fit/log/log.js';
import { formatLogFaults } from '../../fit/log/report.js';
import { readLogAnyUnit } from '../../fit/log/readLog.js';
import { toJson } from '../../report/json.js';
import type { FitInput } from '../../fit/fit.js';
import type { FitResult } from '../../fit/fitResult.js';
import { fittedFrom, readingsToFit } from '../../fit/fitSpan.js';
import { moreThanBurns, predictsWorse } from '../../fit/fitWarnings.js';
import { fitablePaths } from '../../fit/parameters.js';
import { checkWood } from '../../fit/woodCheck.js';
import { format, nearestName, parseQuantity, type UnitSystem } from '../../units/index.js';
import { apart } from '../apart.js';
import type { PictureFormat } from '../drawCharts.js';
import { FITTED_FILE } from '../claims.js';
import { exit, Stop } from '../exit.js';
import { LOG, readText } from '../input.js';
import { loadDesign } from '../loadDesign.js';
import { openFolder, openSink, refuseClashes } from '../output.js';
import { progress, tell } from '../stderr.js';

/** What is fitted and what is held back, as typed. */
export interface FitCommandOptions {
  free?: string;
  holdBack: string;
  save?: string;
  force?: boolean;
  json?: boolean;
  output?: string;
  charts?: string;
  format?: PictureFormat;
  units: UnitSystem;
}

/** Fewer readings than this tell nothing. */
const LEAST_READINGS = 20;
/** No more than this may be held back. */
const MOST_HELD = 0.8;
/** Channel on which a fit's thread says how many runs are done. */
const RUNS = 'pitwright-fit-runs';
/** A word on how far it is, every so many runs. */
const RUNS_TOLD = 20;

/** Measured cooks of one pit in; what they tell of its estimates out, with a file that any design can name. */
export async function run(path: string, given: string[], options: FitCommandOptions): Promise<void> {
  const { logs, heldBack } = heldBackOf(given, options.holdBack);
  if (logs.length === 0) throw new Stop(exit.wrongUsage, 'a fit wants a design and at least one log (CSV).');
  if ([path, ...logs].filter((each) => each === '-').length > 1) {
    throw new Stop(exit.wrongUsage, 'only one of design and logs can come from standard input.');
  }
  const outputs = { '--output': options.output, '--save': options.save };
  refuseClashes(path, outputs);
  for (const log of logs) refuseClashes(log, outputs, 'log');
  const { design, warnings } = await loadDesign(path);
  const inputs: FitInput[] = [];
  for (const log of logs) inputs.push(await readInput(log, design, inputs));
  for (const { log } of inputs) {
    refuseTooShort(design, log, heldBack);
    if (!options.force) refuseTooMuchWood(design, log);
  }
  const paths = pathsOf(options.free, design);
  if (options.charts !== undefined) openFolder(options.charts);
  const out = openSink(options.output ?? '-');
  const saved = options.save === undefined ? undefined : openSink(options.save, FITTED_FILE);

  progress('fitting');
  const asked = { ...(paths ? { paths } : {}), heldBack, accuracy: design.log?.accuracy ?? PROBE_ACCURACY };
  const channel = new BroadcastChannel(RUNS);
  channel.onmessage = ({ data }: { data: unknown }) => {
    if (Number(data) % RUNS_TOLD === 0) progress(`fitting, ${String(data)} runs`);
  };
  const job = { kind: 'fit', design, inputs, options: asked, runs: RUNS } as const;
  const solved = await apart<FitResult | null>(job).finally(() => channel.close());
  if (!solved) {
    throw new Stop(
      exit.notPhysical,
      "this pit can't be followed through the log: its draft keeps tipping from one way of flowing to another. " +
        "'pitwright estimate' says which way and why; check vents and wood in the log too.",
    );
  }
  const result = { ...solved, warnings: [...warnings, ...solved.warnings] };

  await out.write(
    options.json ? toJson(result) : (await import('../../report/text/fitText.js')).fitText(result, options.units),
  );
  const worse = saved !== undefined && predictsWorse(result.quality);
  if (saved && (!worse || options.force)) {
    const { fittedYaml } = await import('../../report/fittedYaml.js');
    await saved.write(fittedYaml(result.fitted, design));
    if (options.save !== '-')
      tell(`fitted values in ${options.save}: name it in a design as 'fitted: ${basename(options.save!)}'`);
  }
  if (options.charts !== undefined) {
    const { fitCharts } = await import('../../charts/fitChart.js');
    const { drawInto } = await import('../drawCharts.js');
    await drawInto(options.charts, fitCharts(result), options.format);
  }
  if (worse && !options.force) throw new Stop(exit.notPhysical, notSaved(result, options));
}

function notSaved({ quality }: FitResult, { save, units }: FitCommandOptions): string {
  const off = (kelvin: number | null) => format('temperatureDifference', kelvin!, units, { digits: 3 });
  return (
    `${save} is not written: this fit predicts the part held back worse (off by ${off(quality.heldBack_K)}) than the design's own ` +
    `estimates do (${off(quality.heldBackBefore_K)}). The warnings say what in the log speaks against it; --force saves it all the same.`
  );
}

/** Unquoted, `--hold-back 30 %` leaves its % among the logs. */
function heldBackOf(given: string[], text: string): { logs: string[]; heldBack: number } {
  const stray = given.indexOf('%');
  const parted = stray >= 0 && /^\d+(\.\d+)?$/.test(text.trim());
  const read = parseQuantity('share', parted ? `${text} %` : text);
  const most = 100 * MOST_HELD;
  if (!read.ok || read.si < 0 || read.si > MOST_HELD) {
    const why = read.ok ? 'is out of range' : read.problem;
    throw new Stop(
      exit.wrongUsage,
      `--hold-back: '${text}' ${why}; allowed: a share from 0 % to ${most} %, such as 30%.`,
    );
  }
  return { logs: parted ? given.filter((_, i) => i !== stray) : given, heldBack: read.si };
}

/** @throws Stop (wrong input) with every fault of the log, or where it counts already */
async function readInput(path: string, design: Design, before: FitInput[]): Promise<FitInput> {
  const { text, fileName } = await readText(path, LOG);
  const hash = createHash('sha256').update(text).digest('hex').slice(0, 16);
  const known = sameLog(design.fitted, hash)?.name ?? before.find((each) => each.hash === hash)?.log.name;
  if (known !== undefined) {
    throw new Stop(
      exit.wrongInput,
      `${fileName}: this log counts already (as ${known}); counted twice it would seem to tell twice as much. Leave it out.`,
    );
  }
  const read = await readLogAnyUnit(text, { fileName, design });
  if (read.faults) {
    const count = read.faults.length;
    throw new Stop(
      exit.wrongInput,
      `${fileName}: ${count === 1 ? 'one fault' : `${count} faults`} in the log\n${formatLogFaults(read.faults)}`,
    );
  }
  return { log: { ...read.log, name: basename(fileName) }, hash };
}

/** @throws Stop (wrong input) where a log has too little left to be fitted */
function refuseTooShort(design: Design, log: CookLog, heldBack: number): void {
  const left = readingsToFit(design, log, heldBack);
  if (left >= LEAST_READINGS) return;
  const hot =
    fittedFrom(design, log) > 0 ? ' once the first hour is left out, since the pit was hot at its first row' : '';
  throw new Stop(
    exit.wrongInput,
    `${log.name}: ${left} temperature readings are left to fit${hot}, with ${Math.round(100 * heldBack)} % held back; ` +
      `${LEAST_READINGS} are needed. Log for longer, from a cold pit on, or hold less back (--hold-back).`,
  );
}

/** @throws Stop (wrong input) where a log has more wood than its pit can burn: a fit would only make up for it */
function refuseTooMuchWood(design: Design, log: CookLog): void {
  const check = checkWood(design, log);
  if (!check || check.laid_kg <= check.most_kg) return;
  const total = log.notes.some(({ code }) => code === 'running-total');
  throw new Stop(
    exit.wrongInput,
    `${log.name}: ${moreThanBurns(check)}. ` +
      (total
        ? 'The column looks like a running total: give each piece by itself, in the row of its time.'
        : 'Is it a running total, or held until the next piece, or in another unit? Each cell is wood laid on at that time.') +
      ' --force fits it all the same.',
  );
}

/** The estimates that are set free, each checked against those that the design has; undefined: all of them. */
function pathsOf(free: string | undefined, design: Design): string[] | undefined {
  if (free === undefined) return undefined;
  const names = fitablePaths(design);
  const asked = [...new Set(free.split(',').map((each) => each.trim()))].filter((each) => each !== '');
  const strange = asked.find((each) => !names.includes(each));
  if (strange !== undefined || asked.length === 0) {
    const near = strange === undefined ? undefined : nearestName(strange, names);
    const what = strange === undefined ? 'it names no estimate' : `this design has no estimate '${strange}' to fit`;
    const meant = near ? `did you mean '${near}'? ` : '';
    throw new Stop(exit.wrongUsage, `--free: ${what}; ${meant}allowed, commas between: ${names.join(', ')}`);
  }
  return asked;
}
