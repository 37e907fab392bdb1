#!/usr/bin/env node
import { constants } from 'node:os';
import { CommanderError } from 'commander';
import { version } from '../version.js';
import { commandLine } from './commandLine.js';
import { exit, Stop } from './exit.js';
import { discardUnfinished, lastWordsOut, reasonUnwritable, STANDARD_OUTPUT } from './output.js';
import { tell } from './stderr.js';

/** The number a run ends with, its cause told on standard error. */
function codeFor(error: unknown): number {
  // commander has already said what's wrong
  if (error instanceof CommanderError) return error.exitCode === 0 ? exit.done : exit.wrongUsage;
  if (error instanceof Stop) {
    tell(`pitwright: ${error.message}`);
    return error.code;
  }
  const what = (error instanceof Error ? error.message : String(error)).split('\n')[0];
  tell(
    `pitwright: our fault, not yours: ${what}. Please report it with the command, the design file and ` +
      `'pitwright --version' (${version}); PITWRIGHT_DEBUG=1 adds the details.`,
  );
  if (process.env.PITWRIGHT_DEBUG && error instanceof Error) tell(error.stack ?? '');
  return exit.ourFault;
}

/** A reader that has seen enough (`| head`) closes the pipe; that's no error, and other outputs still get done. */
function tolerateClosedPipes(): void {
  process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') fail(new Stop(exit.wrongUsage, reasonUnwritable(STANDARD_OUTPUT, error)));
  });
  process.stderr.on('error', () => {
    // there is nowhere left to say it
  });
}

/**
 * What ends a run from outside and leaves it time for last words: the terminal goes, a key is pressed, a limit is
 * reached.
 */
const SIGNALS = ['SIGHUP', 'SIGINT', 'SIGQUIT', 'SIGTERM', 'SIGXCPU'] as const;

function cleanUpWhenStopped(): void {
  for (const signal of SIGNALS) {
    process.once(signal, () => {
      discardUnfinished();
      void lastWordsOut().then(() => process.exit(128 + constants.signals[signal]));
    });
  }
}

/** The first that goes wrong decides what the run ends with. */
function fail(error: unknown): void {
  const code = codeFor(error);
  process.exitCode ||= code;
  discardUnfinished();
}

async function runToItsEnd(): Promise<void> {
  let ended = false;
  process.on('exit', () => {
    if (ended) return;
    // nothing is left to wait for, so something went away without a word
    if (!process.exitCode) fail(new Error('the run ended before its work was done'));
    discardUnfinished();
  });
  await commandLine().parseAsync().catch(fail);
  ended = true;
}

tolerateClosedPipes();
cleanUpWhenStopped();
process.on('uncaughtException', fail);
void runToItsEnd();
