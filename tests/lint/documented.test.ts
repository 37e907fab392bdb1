import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import ts from 'typescript';
import { expect, it } from 'vitest';

const root = new URL('../../src/', import.meta.url).pathname;
const files = readdirSync(root, { recursive: true, encoding: 'utf8' }).filter((file) => file.endsWith('.ts'));

type Told =
  | ts.FunctionDeclaration
  | ts.ClassDeclaration
  | ts.InterfaceDeclaration
  | ts.TypeAliasDeclaration
  | ts.VariableStatement;

const isComment = (text: string) => text.startsWith('/**');
const isCode = (each: Told) => ts.isFunctionDeclaration(each) || ts.isClassDeclaration(each);
const nameOf = (each: Told) =>
  (ts.isVariableStatement(each) ? (each.declarationList.declarations[0].name as ts.Identifier) : each.name)?.text;

/**
 * A block of the design file, which says what it is in its first text: the schema and the messages have it from there.
 */
function saysItself(each: Told, text: string): boolean {
  return ts.isVariableStatement(each) && /= (?:optional\(\s*)?block\(\s*['"]/.test(text.slice(each.pos, each.end));
}

/** What a file exports without a word of what it is; what heads a file of one tells of it. */
function untold(file: string, text: string): string[] {
  const exported = ts
    .createSourceFile(file, text, ts.ScriptTarget.Latest)
    .statements.filter(
      (each): each is Told =>
        ts.isFunctionDeclaration(each) ||
        ts.isClassDeclaration(each) ||
        ts.isInterfaceDeclaration(each) ||
        ts.isTypeAliasDeclaration(each) ||
        ts.isVariableStatement(each),
    )
    .filter(({ modifiers }) => modifiers?.some(({ kind }) => kind === ts.SyntaxKind.ExportKeyword))
    // of a function that may be called in several ways the first tells
    .filter((each, i, all) => i === 0 || nameOf(all[i - 1]) !== nameOf(each));
  const heads = isComment(text) ? [exported, exported.filter(isCode)].filter((all) => all.length === 1).flat() : [];
  return exported
    .filter((each) => !heads.includes(each) && !saysItself(each, text))
    .filter(({ pos }) => !ts.getLeadingCommentRanges(text, pos)?.some((range) => isComment(text.slice(range.pos))))
    .map((each) => `${file} ${nameOf(each)}`);
}

it('everything that other files may use says what it is', () => {
  expect(files.length).toBeGreaterThan(400);
  expect(files.flatMap((file) => untold(file, readFileSync(join(root, file), 'utf8')))).toEqual([]);
});

it('a comment on another is none on it', () => {
  const two = '/** What one is. */\nexport function one() {}\n\nexport function other() {}\n';
  expect(untold('x.ts', two)).toEqual(['x.ts other']);
  expect(untold('x.ts', 'import x from "x";\nexport class Bare {}\n')).toEqual(['x.ts Bare']);
  const kinds = 'import x from "x";\nexport interface A {}\nexport type B = A;\nexport const C = 1;\nconst own = 2;\n';
  expect(untold('x.ts', kinds)).toEqual(['x.ts A', 'x.ts B', 'x.ts C']);
  const block = "import x from 'x';\nexport const grate = optional(\n  block('A grate.', {}),\n);\n";
  expect(untold('x.ts', block)).toEqual([]);
});
