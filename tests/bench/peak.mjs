/** Runs a bundled command, the first argument, in this process with the rest, and tells its peak memory [KiB] on stderr. */
import { writeSync } from 'node:fs';
import { resolve } from 'node:path';
import { pathToFileURL } from 'node:url';

process.on('exit', () => writeSync(2, `\npeak ${process.resourceUsage().maxRSS}\n`));
const [command] = process.argv.splice(2, 1);
await import(pathToFileURL(resolve(command)).href);
