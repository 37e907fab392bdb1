/** Faults of shape: zod's issues in a builder's words, each at its line. */
import type { z } from 'zod';
import { nearestName } from '../units/index.js';
import { shortened } from './faults.js';
import { fieldFor, OTHER_NAMES } from './otherNames.js';
import type { FaultDetail, Reading } from './reading.js';
import { designSchema } from './schema.js';
import { pathText, valueAt, type Path } from './path.js';
import { specimenAt } from './specimens.js';
import { PARTS } from './stations.js';

type Issue = z.core.$ZodIssue;

const TYPE_WORDS: Readonly<Record<string, string>> = {
  object: 'a block of fields',
  record: 'a block of fields',
  array: 'a list',
  string: 'text',
  number: 'a plain number',
};

/**
 * Checks the shape of a tree; every issue becomes a fault of the reading, unless its field already has one.
 *
 * @param schema of a design, or of a file that holds a part of one at the same place
 */
export function checkShape(tree: unknown, reading: Reading, schema: z.ZodType = designSchema): void {
  const result = schema.safeParse(tree);
  if (result.success) return;
  for (const issue of result.error.issues.flatMap((each) => inBlock(each, tree))) report(issue, tree, reading, schema);
}

/** Where a block or a name may stand and there is a block, what is wrong inside the block is the fault. */
function inBlock(issue: Issue, tree: unknown): Issue[] {
  const value = valueAt(tree, issue.path as Path);
  if (issue.code !== 'invalid_union' || typeof value !== 'object' || value === null || Array.isArray(value)) {
    return [issue];
  }
  const inside = issue.errors.find(
    (each) => !each.some(({ code, path }) => code === 'invalid_type' && path.length === 0),
  );
  return inside
    ? inside.map((each) => ({ ...each, path: [...issue.path, ...each.path] })).flatMap((each) => inBlock(each, tree))
    : [issue];
}

function report(issue: Issue, tree: unknown, reading: Reading, schema: z.ZodType): void {
  const path = issue.path.map((part) => (typeof part === 'number' ? part : String(part)));
  if (issue.code === 'unrecognized_keys') {
    for (const key of issue.keys) {
      reading.fault([...path, key], unknownKey(key, path, fieldsAt(path, schema)));
    }
    return;
  }
  if (reading.hasFault(path)) return;
  const value = valueAt(tree, path);
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
      reading.fault(path, {
        code: 'wrong-type',
        message: `is ${typeWord(value)}`,
        allowed: expected(issue, path),
        example: specimenAt(pathText(path)),
      });
  }
}

/** A field that there is none of here: a slip of the pen, or another word for one that does the job. */
function unknownKey(key: string, path: Path, known: string[]): FaultDetail {
  const part = PARTS.find((each) => each === path[0]);
  const near = nearestName(key, known);
  const field = fieldFor(key, part) ?? (near === undefined ? misspelled(key, part) : undefined);
  const message = 'is no field here';
  const detail = { code: 'unknown-key', message, allowed: known.join(', '), atKey: true, value: null } as const;
  if (!field) return { ...detail, nearest: near };
  const block = path.filter((step) => typeof step === 'string').join('.');
  const own = field.replace(`${block}.`, '');
  const last = field.slice(field.lastIndexOf('.') + 1);
  const here = [own, last].find((each) => known.includes(each));
  return {
    ...detail,
    nearest: here ?? field,
    example: specimenAt(here ? [block, here].filter(Boolean).join('.') : field),
  };
}

/** The field that another word for it means, where that is written with a slip of the pen. */
function misspelled(key: string, part?: string): string | undefined {
  const name = nearestName(
    key,
    OTHER_NAMES.map(([each]) => each),
    1,
  );
  return name && fieldFor(name, part);
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
    issue.code === 'invalid_type'
      ? (TYPE_WORDS[issue.expected] ?? issue.expected)
      : schema?.def.shape
        ? 'a name or a block of fields'
        : 'a number or a percentage';
  if (named) return named;
  if (!description) return type;
  // Nearly every field is text, a quantity with its unit: what it holds says more than its type.
  const hint = description
    .replace('. Accepted: ', ', ')
    .replace(/\.$/, '')
    .replace(/^./, (head) => head.toLowerCase());
  return type === 'text' ? hint : `${type}: ${hint}`;
}

interface SchemaNode {
  def: {
    type: string;
    innerType?: SchemaNode;
    element?: SchemaNode;
    shape?: Record<string, SchemaNode>;
    options?: SchemaNode[];
  };
  meta(): { description?: string } | undefined;
}

function unwrap(node: SchemaNode | undefined): SchemaNode | undefined {
  let inner = node;
  while (inner?.def.type === 'optional') inner = inner.def.innerType;
  // of a name or a block, the block has fields
  return inner?.def.options?.find(({ def }) => def.shape) ?? inner;
}

function schemaAt(path: Path, root: z.ZodType = designSchema): SchemaNode | undefined {
  let node = unwrap(root as unknown as SchemaNode);
  for (const part of path) {
    node = unwrap(typeof part === 'number' ? node?.def.element : node?.def.shape?.[part]);
  }
  return node;
}

function fieldsAt(path: Path, root?: z.ZodType): string[] {
  return Object.keys(schemaAt(path, root)?.def.shape ?? {}).map(shortened);
}

/**
 * The step of a path at which the schema knows no such field, with the fields that it does know there; undefined where
 * every step is known. A list may be named without an index.
 */
export function unknownStep(path: Path): { at: Path; known: string[]; nearest: string | undefined } | undefined {
  const inSchema: (string | number)[] = [];
  for (const [i, step] of path.entries()) {
    if (typeof step === 'string') {
      if (schemaAt(inSchema)?.def.type === 'array') inSchema.push(0);
      const known = fieldsAt(inSchema);
      if (!known.includes(step)) return { at: path.slice(0, i + 1), known, nearest: nearestName(step, known) };
    }
    inSchema.push(step);
  }
  return undefined;
}
