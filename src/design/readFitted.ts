/** What measured cooks have told, from the design itself or from the file that it names. */
import { isCollection, parse, parseDocument, visit } from 'yaml';
import type { OtherUnits } from '../units/index.js';
import type { DesignFault } from './faults.js';
import { fittedFileSchema, resolveFitted } from './fields/fitted.js';
import type { Fitted } from './fitted.js';
import { Reading, type Fields } from './reading.js';
import { checkShape } from './shape.js';
import { readSource } from './source.js';

/**
 * Gives the text of a file that a design names, and the name that its faults carry; or says, as one clause, why not.
 */
export type NamedFile = (name: string) => { text: string; fileName: string } | { problem: string; nearest?: string };

interface FittedRead {
  fitted?: Fitted;
  /** of the fitted file; what is wrong with a block in the design is recorded in the design's reading */
  faults: DesignFault[];
}

/** The fitted block of a design, undefined where it names none. */
export function readFitted(
  design: Fields,
  { namedFile, otherUnits }: { namedFile?: NamedFile; otherUnits?: OtherUnits },
): FittedRead {
  const named = design.raw('fitted');
  if (typeof named !== 'string') {
    const block = design.child('fitted');
    return { faults: [], ...(block.present ? { fitted: resolveFitted(block) } : {}) };
  }
  if (!namedFile) {
    design.fault('fitted', {
      code: 'unreadable',
      message: 'names a file, and no file can be read here',
      allowed: 'the block of that file itself, written into the design',
    });
    return { faults: [] };
  }
  const file = namedFile(named);
  if ('problem' in file) {
    const { problem, nearest } = file;
    design.fault('fitted', { code: 'unreadable', message: problem, allowed: 'the name of a fitted file', nearest });
    return { faults: [] };
  }
  return readFittedFile(file.text, file.fileName, otherUnits);
}

/** A fitted file, with every fault of it. */
export function readFittedFile(text: string, fileName: string, otherUnits?: OtherUnits): FittedRead {
  const empty = text.trim() === '';
  const source = readSource(empty ? '{}' : text, fileName);
  if (!('tree' in source)) return { faults: source.faults };
  const reading = new Reading(source, fileName, otherUnits);
  const root = reading.root();
  if (!root.present || !root.has('fitted')) {
    const what = empty ? 'the file is empty' : 'the file holds no fitted block';
    reading.fault([], { code: 'missing', message: what, allowed: 'what `pitwright fit` writes', value: null });
  } else if (typeof root.raw('fitted') === 'string') {
    reading.fault(['fitted'], {
      code: 'wrong-type',
      message: 'names another file',
      allowed: 'the block itself: a fitted file names no other',
    });
  } else {
    const fitted = resolveFitted(root.child('fitted'));
    checkShape(source.tree, reading, fittedFileSchema);
    if (reading.faults.length === 0) return { fitted, faults: [] };
  }
  return { faults: reading.told() };
}

/**
 * The text of a design with the block of the fitted file that it names put in, so that it stands for itself. The same
 * text where it names none.
 *
 * @param text of a design that reads without faults
 */
export function textWithFitted(text: string, namedFile: NamedFile): string {
  if (!/fitted/.test(text)) return text;
  const doc = parseDocument(text.replace(/^\uFEFF/, ''), { schema: 'core', uniqueKeys: false, logLevel: 'error' });
  const { fitted: named } = doc.toJS({ maxAliasCount: 50 }) as { fitted?: unknown };
  const file = typeof named === 'string' ? namedFile(named) : { problem: '' };
  if (!('text' in file)) return text;
  const block = doc.createNode((parse(file.text, { schema: 'core' }) as { fitted: unknown }).fitted);
  visit(block, {
    // a log, a value, a row of the correlation: a line each, as the file has them
    Collection: (_, node, path) => void (isCollection(node) && path.length >= INSIDE && (node.flow = true)),
  });
  doc.set('fitted', block);
  return doc.toString({ lineWidth: 0 });
}

/** Steps down from the block to what stands on one line. */
const INSIDE = 3;
