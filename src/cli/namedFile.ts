import { readFileSync, statSync } from 'node:fs';
import { dirname, isAbsolute, join } from 'node:path';
import { visibleName } from '../words/plainText.js';
import type { NamedFile } from '../design/readFitted.js';
import { claimInput, FITTED_FILE } from './claims.js';
import { nearestFile, pathNamed, STANDARD_INPUT } from './input.js';

/** Above this it's some other file [bytes]. */
const LARGEST = 250_000;

/**
 * Files that a design names, found beside it; beside a design on standard input is the working folder.
 *
 * @param fileName of the design, as messages name it
 */
export function filesBeside(fileName: string): NamedFile {
  const folder = fileName === STANDARD_INPUT ? '.' : dirname(pathNamed(fileName));
  return (name) => {
    const path = isAbsolute(name) ? name : join(folder, name);
    try {
      const found = statSync(path);
      if (found.isDirectory()) return { problem: 'names a folder' };
      if (!found.isFile()) return { problem: 'names no plain file' };
      claimInput(path, FITTED_FILE);
      if (found.size > LARGEST) return { problem: `names a file of over ${LARGEST / 1e3} kB` };
      return {
        text: new TextDecoder('utf-8', { fatal: true }).decode(readFileSync(path)),
        fileName: visibleName(path),
      };
    } catch (error) {
      return whyNot(error, name, path);
    }
  };
}

function whyNot(error: unknown, name: string, path: string): { problem: string; nearest?: string } {
  const { code } = error as NodeJS.ErrnoException;
  switch (code) {
    case 'ENOENT':
    case 'ENOTDIR': {
      const near = nearestFile(path, dirname(name));
      return {
        problem: `names no file: there is no ${visibleName(path)}`,
        ...(near === undefined ? {} : { nearest: near }),
      };
    }
    case 'EACCES':
    case 'EPERM':
      return { problem: 'names a file that you may not read' };
    case 'ERR_ENCODING_INVALID_ENCODED_DATA':
      return { problem: 'names a file that is no UTF-8 text' };
    default:
      return { problem: `names a file that can't be read (${code ?? String(error)})` };
  }
}
