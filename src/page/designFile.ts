/** All options of the page in one design file: the first is its design, the others stand under `options:` by what they change. */
import { parse } from 'yaml';
import { isPath, type Tree } from '../design/vary.js';
import { readDesign } from '../design/read.js';
import { plainText } from '../words/plainText.js';
import type { DesignText } from './designText.js';
import type { Option } from './workbench.js';

export interface DesignFile {
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
    // a name is no way to build a pit
    if (sameBuild(own, base)) {
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

function unnamed(design: Option['design'] | undefined): string {
  return JSON.stringify(design && { ...design, name: '', shop: '', job: '' });
}

/** The tree of a text without its options. */
export function treeOf(text: DesignText): Tree {
  const tree = parse(text.text(), { schema: 'core' }) as Tree;
  delete tree.options;
  return tree;
}

const NAMES = ['name', 'shop', 'job'];

function sameBuild(a: Tree, b: Tree): boolean {
  const build = (tree: Tree) => JSON.stringify({ ...tree, ...Object.fromEntries(NAMES.map((key) => [key, ''])) });
  return build(a) === build(b);
}

/** The fields that differ, each by its path. */
function fieldChanges(from: unknown, to: unknown, path = ''): Changes {
  if (JSON.stringify(from) === JSON.stringify(to)) return {};
  const inside = (pairs: [string, unknown, unknown][]) =>
    Object.assign({}, ...pairs.map(([at, a, b]) => fieldChanges(a, b, at))) as Changes;
  if (isTree(from) && isTree(to)) {
    const keys = [...new Set([...Object.keys(from), ...Object.keys(to)])].filter(
      (key) => path !== '' || !NAMES.includes(key),
    );
    const below = (key: string) => (path === '' ? key : `${path}.${key}`);
    if (keys.every((key) => isPath(below(key)))) return inside(keys.map((key) => [below(key), from[key], to[key]]));
  }
  if (Array.isArray(from) && Array.isArray(to) && from.length === to.length && to.every(isTree)) {
    return inside(to.map((item, i) => [`${path}[${i}]`, from[i], item]));
  }
  return { [path]: to ?? 'none' };
}

/** The blocks that differ, each as a whole. */
function blockChanges(from: Tree, to: Tree): Changes {
  const keys = [...new Set([...Object.keys(from), ...Object.keys(to)])].filter((key) => !NAMES.includes(key));
  return Object.fromEntries(
    keys.filter((key) => JSON.stringify(from[key]) !== JSON.stringify(to[key])).map((key) => [key, to[key] ?? 'none']),
  );
}

function isTree(value: unknown): value is Tree {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** A name that a file takes: not empty, and no other's. */
function nameFor({ label }: Option, taken: ReadonlySet<string>): string {
  const own = plainText(label, 60) || 'option';
  let name = own;
  for (let count = 2; taken.has(name.toLowerCase()); count++) name = `${own} (${count})`;
  return name;
}
