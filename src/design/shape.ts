/** Faults of shape: zod's issues in a builder's words, each at its line. */
import type { z } from 'zod';
import { nearestName } from '../units.js';
import { shortened } from './faults.js';
import type { Reading } from './reading.js';
import { designSchema } from './schema.js';
import type { Path } from './source.js';

type Issue = z.core.$ZodIssue;

const TYPE_WORDS: Readonly<Record<string, string>> = {
  object: 'a block of fields',
  array: 'a list',
  string: 'text',
  number: 'a plain number',
};

/** Checks the shape of a tree; every issue becomes a fault of the reading, unless its field already has one. */
export function checkShape(tree: unknown, reading: Reading): void {
  const result = designSchema.safeParse(tree);
  if (result.success) return;
  for (const issue of result.error.issues) report(issue, tree, reading);
}

function report(issue: Issue, tree: unknown, reading: Reading): void {
  const path = issue.path.map((part) => (typeof part === 'number' ? part : String(part)));
  if (issue.code === 'unrecognized_keys') {
    for (const key of issue.keys) {
      if (reading.hasFault([...path, key])) continue;
      const known = fieldsAt(path);
      reading.fault([...path, key], {
        code: 'unknown-key',
        message: 'is no field here',
        allowed: known.join(', '),
        nearest: nearestName(key, known),
        atKey: true,
        value: null,
      });
    }
    return;
  }
  if (reading.hasFault(path)) return;
  const value = at(tree, path);
  if (value === undefined || value === null) {
    const empty = value === null;
    reading.fault(path, {
      code: 'missing',
      message: path.length === 0 ? 'the file holds no design' : empty ? 'is empty' : 'is missing',
      allowed: path.length === 0 ? 'fields; `pitwright new` writes a design to start from' : expected(issue, path),
      value: null,
      atKey: empty && path.length > 0,
    });
    return;
  }
  switch (issue.code) {
    case 'invalid_value': {
      const names = issue.values.map(String);
      reading.fault(path, {
        code: 'unknown-name',
        message: 'is not known here',
        allowed: names.join(', '),
        nearest: typeof value === 'string' ? nearestName(value, names) : undefined,
      });
      return;
    }
    case 'too_small':
    case 'too_big': {
      const few = issue.code === 'too_small';
      const bound = few ? issue.minimum : issue.maximum;
      const list = Array.isArray(value);
      reading.fault(path, {
        code: 'out-of-range',
        message: list ? (few ? 'holds too few' : 'holds too many') : 'is too long',
        allowed: `${few ? 'at least' : 'up to'} ${String(bound)}${list ? '' : ' characters'}`,
      });
      return;
    }
    default:
      reading.fault(path, { code: 'wrong-type', message: `is ${typeWord(value)}`, allowed: expected(issue, path) });
  }
}

function typeWord(value: unknown): string {
  if (Array.isArray(value)) return 'a list';
  if (typeof value === 'object') return 'a block of fields';
  if (typeof value === 'string') return 'text';
  if (typeof value === 'number') return Number.isFinite(value) ? 'a plain number' : 'not a finite number';
  return `${typeof value === 'boolean' ? 'yes or no' : typeof value}`;
}

/** What belongs at a path: the type, with the field's own description where it has one. */
function expected(issue: Issue, path: Path): string {
  const schema = schemaAt(path);
  const description = schema?.meta()?.description;
  const named = issue.code === 'invalid_value' ? issue.values.map(String).join(', ') : undefined;
  const type =
    issue.code === 'invalid_type' ? (TYPE_WORDS[issue.expected] ?? issue.expected) : 'a number or a percentage';
  if (named) return named;
  if (!description) return type;
  // Nearly every field is text, a quantity with its unit: what it holds says more than its type.
  const hint = description
    .replace('. Accepted: ', ', ')
    .replace(/\.$/, '')
    .replace(/^./, (head) => head.toLowerCase());
  return type === 'text' ? hint : `${type}: ${hint}`;
}

function at(tree: unknown, path: Path): unknown {
  let value = tree;
  for (const part of path) {
    if (typeof value !== 'object' || value === null || !Object.hasOwn(value, part)) return undefined;
    value = (value as Record<string | number, unknown>)[part];
  }
  return value;
}

interface SchemaNode {
  def: { type: string; innerType?: SchemaNode; element?: SchemaNode; shape?: Record<string, SchemaNode> };
  meta(): { description?: string } | undefined;
}

function unwrap(node: SchemaNode | undefined): SchemaNode | undefined {
  let inner = node;
  while (inner?.def.type === 'optional') inner = inner.def.innerType;
  return inner;
}

function schemaAt(path: Path): SchemaNode | undefined {
  let node = unwrap(designSchema as unknown as SchemaNode);
  for (const part of path) {
    node = unwrap(typeof part === 'number' ? node?.def.element : node?.def.shape?.[part]);
  }
  return node;
}

function fieldsAt(path: Path): string[] {
  return Object.keys(schemaAt(path)?.def.shape ?? {}).map(shortened);
}
