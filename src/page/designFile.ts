/**
 * All options of the page in one design file: the first is its design, the others stand under `options:` by what they
 * change.
 */
import { blockOf, isPath, type Tree } from '../design/vary.js';
import { readDesign } from '../design/read.js';
import { freeLabel } from '../study/compare/distinctLabels.js';
import { plainText } from '../words/plainText.js';
import type { DesignText } from './designText.js';
import type { Option } from './option.js';

interface DesignFile {
  text: string;
  /** options that differ in nothing but their name, which a file has no way to say */
  same: Option[];
  /** options whose changes can't be said by field */
  apart: Option[];
}

type Changes = Record<string, unknown>;

/** The text of a design file with everything in it; it reads back to the same designs. */
export function designFile([first, ...others]: readonly Option[]): DesignFile {
  const base = treeOf(first.text);
  const names = new Set(['as drawn']);
  const file: DesignFile = { text: '', same: [], apart: [] };
  const named: { name: string; changes: Changes }[] = [];
  for (const option of others) {
    const own = treeOf(option.text);
    if (unnamed(own) === unnamed(base)) {
      file.same.push(option);
      continue;
    }
    const name = nameFor(option, names);
    // field by field where that says it all: a door goes with its plate, and a pipe's wall with its size
    const ways = [fieldChanges(base, own), blockChanges(base, own)];
    const changes = ways.find((each) => readsBack(first.text, { name, changes: each }, option));
    if (!changes) {
      file.apart.push(option);
      continue;
    }
    names.add(name.toLowerCase());
    named.push({ name, changes });
  }
  file.text = withOptions(first.text, named).text();
  return file;
}

/** The design alone, and the same text with these options. */
function withOptions(design: DesignText, options: readonly { name: string; changes: Changes }[]): DesignText {
  const text = design.copy();
  text.remove(['options']);
  if (options.length > 0) text.setTree(['options'], options);
  return text;
}

function readsBack(base: DesignText, option: { name: string; changes: Changes }, { design }: Option): boolean {
  const read = readDesign(withOptions(base, [option]).text(), { fileName: 'page' });
  return read.faults === undefined && unnamed(read.options[0]?.design) === unnamed(design);
}

/** Designs are built alike where this is the same: a name is no way to build a pit. */
function unnamed(pit: object | undefined): string {
  return JSON.stringify(pit && { ...pit, name: '', shop: '', job: '' });
}

/** The tree of a text without its options. */
export function treeOf(text: DesignText): Tree {
  const tree = text.tree();
  delete tree.options;
  return tree;
}

const NAMES = ['name', 'shop', 'job'];

/** The fields that differ, each by its path. */
function fieldChanges(from: unknown, to: unknown, path = ''): Changes {
  if (JSON.stringify(from) === JSON.stringify(to)) return {};
  const inside = (pairs: [string, unknown, unknown][]) =>
    Object.assign({}, ...pairs.map(([at, a, b]) => fieldChanges(a, b, at))) as Changes;
  const [before, after] = [blockOf(from), blockOf(to)];
  if (before && after) {
    const keys = keysOf(before, after).filter((key) => path !== '' || !NAMES.includes(key));
    const below = (key: string) => (path === '' ? key : `${path}.${key}`);
    if (keys.every((key) => isPath(below(key))))
      return inside(keys.map((key) => [below(key), before[key], after[key]]));
  }
  if (Array.isArray(from) && Array.isArray(to) && from.length === to.length && to.every(blockOf)) {
    return inside(to.map((item, i) => [`${path}[${i}]`, from[i], item]));
  }
  return { [path]: to ?? 'none' };
}

/** The blocks that differ, each as a whole. */
function blockChanges(from: Tree, to: Tree): Changes {
  const keys = keysOf(from, to).filter((key) => !NAMES.includes(key));
  return Object.fromEntries(
    keys.filter((key) => JSON.stringify(from[key]) !== JSON.stringify(to[key])).map((key) => [key, to[key] ?? 'none']),
  );
}

function keysOf(from: Tree, to: Tree): string[] {
  return [...new Set([...Object.keys(from), ...Object.keys(to)])];
}

/** A name that a file takes: not empty, and no other's. */
function nameFor({ label }: Option, taken: ReadonlySet<string>): string {
  const own = plainText(label, 60) || 'option';
  return freeLabel(own, (name) => taken.has(name.toLowerCase()));
}
