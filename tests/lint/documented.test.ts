import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import ts from 'typescript';
import { expect, it } from 'vitest';

const root = new URL('../../src/', import.meta.url).pathname;
const files = readdirSync(root, { recursive: true, encoding: 'utf8' }).filter((file) => file.endsWith('.ts'));

const isComment = (text: string) => text.startsWith('/**');

/** Exported functions and classes of a file without a word of what they are; what heads a file of one tells of it. */
function untold(file: string, text: string): string[] {
  const { statements } = ts.createSourceFile(file, text, ts.ScriptTarget.Latest);
  const exported = statements
    .filter((each) => ts.isFunctionDeclaration(each) || ts.isClassDeclaration(each))
    .filter(({ modifiers }) => modifiers?.some(({ kind }) => kind === ts.SyntaxKind.ExportKeyword))
    // of a function that may be called in several ways the first tells
    .filter(({ name }, i, all) => all[i - 1]?.name?.text !== name?.text);
  if (exported.length === 1 && isComment(text)) return [];
  return exported
    .filter(({ pos }) => !ts.getLeadingCommentRanges(text, pos)?.some((range) => isComment(text.slice(range.pos))))
    .map(({ name }) => `${file} ${name?.text}`);
}

it('every function and class that others may call says what it is', () => {
  expect(files.length).toBeGreaterThan(400);
  expect(files.flatMap((file) => untold(file, readFileSync(join(root, file), 'utf8')))).toEqual([]);
});

it('a comment on another is none on it', () => {
  const two = '/** What one is. */\nexport function one() {}\n\nexport function other() {}\n';
  expect(untold('x.ts', two)).toEqual(['x.ts other']);
  expect(untold('x.ts', 'import x from "x";\nexport class Bare {}\n')).toEqual(['x.ts Bare']);
});
