import { spawn } from 'node:child_process';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { exit, Stop } from './exit.js';
import { tell } from './stderr.js';

/** Nobody has asked for the page for so long: no browser came [ms]. */
const NOBODY_CAME = 120_000;
/** After the page is handed over, a reload is still answered for so long [ms]; the page itself needs nothing more. */
const RELOADS = 20_000;

interface ShowOptions {
  /** opens an address in a browser; resolves false when none could be started */
  browse?: (address: string) => Promise<boolean>;
  nobodyCame?: number;
  reloads?: number;
}

/**
 * Shows a page in the browser through a server on this machine alone, which ends by itself once the page is there.
 *
 * @throws Stop when no server can be had, or nobody fetched the page
 */
export async function showPage(html: string, options: ShowOptions = {}): Promise<void> {
  const { browse = startBrowser, nobodyCame = NOBODY_CAME, reloads = RELOADS } = options;
  const body = Buffer.from(html);
  let served = false;
  let clock: NodeJS.Timeout | undefined;
  const server = createServer((request, response) => {
    // another name for this machine in the address would be some web site's doing
    const known = request.headers.host === hostOf(server) && request.url === '/';
    if (!known || (request.method !== 'GET' && request.method !== 'HEAD')) {
      response.writeHead(404, { 'content-type': 'text/plain' }).end('There is only the page itself here.\n');
      return;
    }
    response.writeHead(200, {
      'content-type': 'text/html; charset=utf-8',
      'content-length': body.length,
      'cache-control': 'no-store',
      'x-content-type-options': 'nosniff',
    });
    response.end(request.method === 'HEAD' ? undefined : body, () => {
      served ||= request.method === 'GET';
      wait(reloads);
    });
  });
  const wait = (time: number) => {
    clearTimeout(clock);
    clock = setTimeout(() => {
      server.close();
      server.closeAllConnections();
    }, time);
  };
  const closed = new Promise<void>((done) => server.once('close', done));
  await listen(server);
  const address = `http://${hostOf(server)}/`;
  wait(nobodyCame);
  tell(`pitwright: the page is at ${address} until it has been opened; after that it needs nothing from here.`);
  if (!(await browse(address))) tell('pitwright: no browser could be started; open that address in one.');
  await closed;
  clearTimeout(clock);
  if (!served) throw new Stop(exit.wrongUsage, 'nobody opened the page. Write it to a file with -o FILE instead.');
}

function hostOf(server: Server): string {
  return `127.0.0.1:${(server.address() as AddressInfo).port}`;
}

function listen(server: Server): Promise<void> {
  return new Promise((done, failed) => {
    server.once('error', (error: NodeJS.ErrnoException) =>
      failed(new Stop(exit.wrongUsage, `no server can be started here (${error.code}). Write a file with -o FILE.`)),
    );
    server.listen(0, '127.0.0.1', done);
  });
}

/** The machine's own way to open an address. */
function startBrowser(address: string): Promise<boolean> {
  const [command, args] =
    process.platform === 'darwin'
      ? ['open', [address]]
      : process.platform === 'win32'
        ? ['cmd', ['/c', 'start', '""', address]]
        : ['xdg-open', [address]];
  return new Promise((done) => {
    const child = spawn(command, args, { stdio: 'ignore', detached: true });
    child.once('error', () => done(false));
    child.once('spawn', () => {
      child.unref();
      done(true);
    });
  });
}
