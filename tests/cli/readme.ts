/** What the README says that a command answers, paragraph by paragraph. */
import { readFileSync } from 'node:fs';
import { expect } from 'vitest';
import { pitwright } from './support/run.js';

export const readme = readFileSync('README.md', 'utf8');

const ANSWERED = /```sh\npitwright (.*)\n```\n\n((?:>.*\n)+)/g;

/** Commands with an answer quoted under them. */
export const answered = [...readme.matchAll(ANSWERED)].map(([, command, quote]) => ({
  command,
  answers: quote
    .replace(/^> ?/gm, '')
    .split('\n\n')
    .map((paragraph) => flat(paragraph)),
}));

/** A command of the README prints what stands under it. @returns what it prints */
export async function expectAnswered({ command, answers }: (typeof answered)[number]): Promise<string> {
  const args = [...command.matchAll(/'([^']*)'|(\S+)/g)].map(([, quoted, plain]) => quoted ?? plain);
  const { code, stdout } = await pitwright(args);
  expect(code).toBe(0);
  const told = flat(stdout);
  for (const answer of answers) expect(told).toContain(answer);
  return stdout;
}

function flat(text: string): string {
  return text.replace(/\s+/g, ' ').trim();
}
