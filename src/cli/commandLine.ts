/** What may be typed: the commands, their arguments and options. */
import { Argument, Command, InvalidArgumentError, Option } from 'commander';
import { version } from '../version.js';
import { visible } from '../words/plainText.js';
import { standardOutput } from './output.js';

const units = () =>
  new Option('--units <system>', 'units of the text: shop (°F, in, lb) with SI beside it, or si alone')
    .choices(['shop', 'si'])
    .default('shop');
const pictures = () => new Option('--format <format>', 'of the charts').choices(['png', 'svg']).default('png');
/** Reads a whole number within limits. */
const whole = (low: number, high: number) => (text: string) => {
  const value = Number(text);
  if (/^\d+$/.test(text) && value >= low && value <= high) return value;
  throw new InvalidArgumentError(`It takes a whole number from ${low} to ${high}.`);
};
/** What an option that may be given again has gathered. */
const collected = (value: string, before: string[]) => [...before, value];
const equal = () =>
  new Option('--equal <what>', 'what stays as it is where a shape varies').choices(['volume', 'length', 'weight']);
const workers = () =>
  new Option(
    '--workers <count>',
    'threads that share the work (default: as many as the machine runs at once)',
  ).argParser(whole(1, 64));
/** Reads how many times the air it needs a fire gets. */
const airRatio = (text: string) => {
  const value = Number(text);
  if (/^\d+(\.\d+)?$/.test(text) && value >= 1.2 && value <= 20) return value;
  throw new InvalidArgumentError('It takes a number from 1.2 to 20, times the air that the wood needs.');
};
/** Options of a command that can say how sure its numbers are. */
const withSpread = (command: Command) =>
  command
    .addOption(
      new Option(
        '--spread <cases>',
        'how sure it is: also run so many cases with every estimate drawn from its spread',
      ).argParser(whole(20, 10_000)),
    )
    .addOption(
      new Option('--seed <number>', 'what the cases are drawn from: the same seed gives the same cases')
        .argParser(whole(0, 2 ** 31 - 1))
        .default(1),
    )
    .addOption(workers());
const json = 'print the full result as JSON, in SI units';
const outFile = 'write to FILE instead of standard output';
const design = 'design file (YAML or JSON), or - for standard input';

/** Every command with its options; what each does is loaded when it is called. */
export function commandLine(): Command {
  const program = new Command('pitwright')
    .description(
      'Tells a builder of wood-fired offset smokers, before steel is cut, how a design will heat and breathe.',
    )
    .version(version)
    .helpCommand(true)
    .showHelpAfterError("('pitwright help' lists the commands and their options)")
    .configureOutput({
      outputError: (message, write) => write(visible(message.replace(/^error: /, 'pitwright: '))),
      writeOut: (text) => void standardOutput.write(text),
    })
    .exitOverride();

  // each command's code is loaded when it's called: a start stays quick however much the others need
  withSpread(
    program
      .command('estimate')
      .description('warm-up, temperatures, heat loss, wood and draft of a design')
      .argument('<design>', design)
      .option(
        '--full',
        'with every table: warm-up, temperatures by height, openings, weights, hands, trailer, estimates, balances',
      )
      .option('--json', json)
      .option('-o, --output <file>', outFile)
      .option('--csv <file>', 'also write the warm-up curves as CSV')
      .option('--charts <dir>', 'also draw the charts into this folder')
      .addOption(pictures())
      .addOption(units()),
  ).action(async (path, options) => (await import('./commands/estimate.js')).run(path, options));

  withSpread(
    program
      .command('compare')
      .description('options of a design, or several designs, held against each other: what each buys and costs')
      .argument('<designs...>', 'design files (YAML or JSON); - for standard input')
      .option(
        '--vary <field=values>',
        "a field, or several with commas, and its values, bars between: 'chamber.plate=1/8 in | 1/4 in'; all.plate sets every part's; " +
          "'none' takes the field away; repeat it for every combination",
        collected,
        [] as string[],
      )
      .addOption(equal())
      .addOption(
        new Option('--baseline <number>', 'which option the others are held against, counted from 1')
          .argParser(whole(1, 24))
          .default(1),
      )
      .option('--price <price>', "price of steel, for its cost: '$1.20/lb'")
      .option('--door <time>', 'how long the door stands open (default: 60 s)')
      .option('--json', json)
      .option('-o, --output <file>', outFile)
      .option('--csv <file>', 'also write the table as CSV')
      .option('--charts <dir>', 'also draw the charts into this folder')
      .addOption(pictures())
      .addOption(
        new Option('--units <system>', 'units of text and CSV: shop (°F, in, lb) or si')
          .choices(['shop', 'si'])
          .default('shop'),
      ),
  ).action(async (paths, options) => (await import('./commands/compare.js')).run(paths, options));

  withSpread(
    program
      .command('report')
      .description("one file for a buyer, the shop's sheets behind it: HTML that needs nothing else, or PDF")
      .argument('<design>', design)
      .option(
        '--vary <field=values>',
        "options side by side, as in compare: 'all.plate=1/4 in | 1/8 in'; the first is the baseline",
        collected,
        [] as string[],
      )
      .addOption(equal())
      .addOption(
        new Option('--format <format>', 'html or pdf (default: by the ending of FILE, else html)').choices([
          'html',
          'pdf',
        ]),
      )
      .option('--sizes', 'with a sheet of intakes, throat and stack from stock, as size finds them')
      .addOption(new Option('--paper <paper>', 'sheets of this size').choices(['letter', 'a4']).default('letter'))
      .option('-o, --output <file>', outFile),
  ).action(async (path, options) => (await import('./commands/report.js')).run(path, options));

  program
    .command('size')
    .description('intakes, throat and stack from stock that carry the fire of a design, each solved, with margins')
    .argument('<design>', design)
    .addOption(
      new Option(
        '--clean-air <ratio>',
        'air, times what the wood needs, at which the fire that holds burns clean (an estimate)',
      )
        .argParser(airRatio)
        .default(2.5),
    )
    .option('--full', 'every limit and choice, other weather, the vents in use, rules of thumb')
    .option('--json', json)
    .option('-o, --output <file>', outFile)
    .option('--charts <dir>', 'also draw the charts into this folder')
    .addOption(pictures())
    .addOption(units())
    .addOption(workers())
    .action(async (path, options) => (await import('./commands/size.js')).run(path, options));

  program
    .command('page')
    .description('the interactive page: one file that computes in a browser, without a network')
    .argument('[design]', 'design to start with; a plain offset when left out')
    .option('-o, --output <file>', 'write the page to FILE')
    .option('--open', 'show it in the browser')
    .action(async (path, options) => (await import('./commands/page.js')).run(path, options));

  program
    .command('cook')
    .description("a day's cook by the design's schedule: wood, curve, time in the band")
    .argument('<design>', `${design}; it needs a cook block`)
    .option('--json', json)
    .option('-o, --output <file>', outFile)
    .option('--csv <file>', 'also write the curve as CSV')
    .option('--charts <dir>', 'also draw the day into this folder, as PNG')
    .addOption(units())
    .action(async (path, options) => (await import('./commands/cook.js')).run(path, options));

  program
    .command('cold-smoke')
    .description('whether the upright stays cold enough to smoke cold, and with what fire')
    .argument('<design>', design)
    .option('--ceiling <temperature>', 'what its thermometers may read at most (default: 90 °F)')
    .option('--least <heat>', 'least fire that stays alight (default: 0.5 lb wood/h)')
    .option('--air <temperature>', "outdoor air of the day (default: the design's)")
    .option('--json', json)
    .option('-o, --output <file>', outFile)
    .addOption(units())
    .action(async (path, options) => (await import('./commands/coldSmoke.js')).run(path, options));

  program
    .command('fit')
    .description('measured cooks of a pit: what its estimates then are, how sure, and how good the fit is')
    .argument('<design>', design)
    .argument('<logs...>', 'what a logger wrote (CSV): time, thermometers, wood laid on, vents, door, weather')
    .option(
      '--free <fields>',
      'estimates to fit, commas between; the rest are held as the design has them (default: all)',
    )
    .option('--hold-back <share>', 'end of each log that is not fitted but predicted, to judge the fit by', '30%')
    .option('--save <file>', "write what was found to FILE, for designs to name as 'fitted: FILE'")
    .option(
      '--force',
      'go on where the wood is more than can burn, and save a fit that predicts worse than the design did',
    )
    .option('--json', json)
    .option('-o, --output <file>', outFile)
    .option('--charts <dir>', 'also draw measured against computed into this folder')
    .addOption(pictures())
    .addOption(units())
    .action(async (path, logs, options) => (await import('./commands/fit.js')).run(path, logs, options));

  program
    .command('batch')
    .description('many designs, one a line on standard input (NDJSON), to one line of results each, in their order')
    .option(
      '--changes <design>',
      'the lines are a CSV of changes to this design: a column a field, or several with commas, as in compare --vary',
    )
    .option('--steady', 'leave the warm-up out')
    .addOption(new Option('--series', 'with the curves of the warm-up').conflicts('steady'))
    .addOption(
      new Option('--from <line>', 'first design to compute, counted from 1; the lines before it are passed over')
        .argParser(whole(1, 1e12))
        .default(1),
    )
    .addOption(new Option('--count <designs>', 'how many to compute at most').argParser(whole(1, 1e12)))
    .option('-o, --output <file>', outFile)
    .addOption(workers())
    .action(async (options) => (await import('./commands/batch.js')).run(options));

  program
    .command('check')
    .description('check a design and show its areas, weights and heights, without solving')
    .argument('<design>', design)
    .option('--json', json)
    .option('-o, --output <file>', outFile)
    .addOption(units())
    .action(async (path, options) => (await import('./commands/check.js')).run(path, options));

  program
    .command('refine')
    .description('compute a design with more cells and tighter time steps: what the numbers owe to that')
    .argument('<design>', design)
    .option('--json', json)
    .option('-o, --output <file>', outFile)
    .addOption(units())
    .action(async (path, options) => (await import('./commands/refine.js')).run(path, options));

  program
    .command('new')
    .description('write a commented design to start from')
    .option('--with <things>', 'also a commented example of each of these: handles, chamber.door, stacks ...')
    .option('-o, --output <file>', outFile)
    .action(async (options) => (await import('./commands/new.js')).run(options));

  program
    .command('evidence')
    .description('run every published case and measured fire behind the numbers, and show how far they can be trusted')
    .option('--cases <file>', 'run a CSV of cases of your own instead, - for standard input')
    .option('--list', 'list the checks that a case may name, with inputs and units')
    .option('--json', json)
    .option('-o, --output <file>', outFile)
    .option('--charts <dir>', 'also draw computed against measured into this folder, as PNG')
    .addOption(new Option('--renew').hideHelp())
    .action(async (options) => (await import('./commands/evidence.js')).run(options));

  program
    .command('schema')
    .description('print the JSON Schema of design files, for editors that complete and check')
    .option('-o, --output <file>', outFile)
    .action(async (options) => (await import('./commands/schema.js')).run(options));

  program
    .command('completion')
    .description('a script by which a shell completes commands, options and fields')
    .addArgument(new Argument('<shell>', 'whose script').choices(['bash', 'zsh', 'fish']))
    .action(async (shell) => (await import('./commands/completion.js')).run(program, shell));

  return program;
}
