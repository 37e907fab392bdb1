import { readdirSync, readFileSync } from 'node:fs';
import { parse } from 'csv-parse/sync';
import { describe, expect, test } from 'vitest';
import { REGISTRY } from '../../src/verify/registry.js';
import { METHODS } from '../../src/words/methods.js';
import { CodeGraph, type Place } from '../support/codeGraph.js';

// What is checked against print must be what a pit runs; relations kept only to recheck print stand in
// verify/relations.

/**
 * What a builder asks for: a design read, its estimate, the day of a cook and its events, cold smoke, hands and
 * weights.
 */
const ASKED = [
  'design/read.ts#readDesign',
  'study/estimate/estimate.ts#estimate',
  'study/compare/studyOption.ts#studyOption',
  'study/events/coldSmoke.ts#coldSmoke',
  'study/carry/touch.ts#handsOf',
  'study/carry/weight.ts#weightOf',
];

const graph = new CodeGraph([...ASKED.map((place) => place.split('#')[0]), 'verify/registry.ts']);
const run = graph.reachedFrom(ASKED);

const folder = (path: string) => new URL(`../../${path}/`, import.meta.url);
const rows = readdirSync(folder('reference'))
  .filter((name) => /^cases-.*\.csv$/.test(name))
  .flatMap((name) => parse(readFileSync(new URL(name, folder('reference'))), { columns: true }) as { check: string }[]);
const named = [...new Set(rows.map(({ check }) => check))].filter((name) => name !== '');

/** Where a check of the registry is defined. */
const definedAt = new Map<string, Place>();
for (const place of graph.places) {
  const entry = /^verify\/checks\/.*Checks\.(\w+)$/.exec(place);
  if (entry && REGISTRY.has(entry[1])) definedAt.set(entry[1], place);
}

const isCheck = (place: Place) => place.startsWith('verify/');
const isRelation = (place: Place) => place.startsWith('verify/relations/');

/** What a check uses that is not part of checking: the functions that its answer comes from. */
function worksWith(check: string): Place[] {
  const used = graph.reachedFrom([definedAt.get(check)!], isCheck);
  return [...used].filter((place) => !isCheck(place) || isRelation(place));
}

test('every check of the registry is found in the code', () => {
  expect([...REGISTRY.keys()].filter((name) => !definedAt.has(name))).toEqual([]);
});

test('a relation kept for print alone is not run by a pit, and what a pit runs is', () => {
  expect(run.has('verify/relations/friction.ts#colebrook')).toBe(false);
  expect(worksWith('colebrook')).toContain('verify/relations/friction.ts#colebrook');
  expect(run.has('physics/friction.ts#haaland')).toBe(true);
});

describe('a row of reference/ names what a pit runs, or a relation kept for print', () => {
  test.each(named)('%s', (name) => {
    const functions = worksWith(name);
    expect(functions).not.toEqual([]);
    expect(functions.filter((place) => !isRelation(place) && !run.has(place))).toEqual([]);
  });
});

const physics = graph.places.filter((place) => /^physics\/[^#]*#\w+$/.test(place));

test('everything in physics is run by a pit', () => {
  expect(physics.filter((place) => !run.has(place))).toEqual([]);
  const files = readdirSync(folder('src/physics')).filter((name) => name.endsWith('.ts'));
  expect(files.filter((name) => !physics.some((place) => place.startsWith(`physics/${name}#`)))).toEqual([]);
});

/** Gives no number. */
const NO_NUMBER = 'physics/validity.ts#outsideValidity';

describe('every public function of physics has a row that runs it', () => {
  const inRows = graph.reachedFrom(
    named.map((name) => definedAt.get(name)!),
    (place) => isCheck(place) || place.startsWith('physics/'),
  );
  test.each(readdirSync(folder('src/physics')).filter((name) => name.endsWith('.ts')))('%s', async (file) => {
    const module = (await import(new URL(file, folder('src/physics')).href)) as Record<string, unknown>;
    const functions = Object.keys(module).filter((name) => typeof module[name] === 'function');
    const places = functions.map((name) => `physics/${file}#${name}`);
    expect(places.filter((place) => place !== NO_NUMBER && !inRows.has(place))).toEqual([]);
  });
});

describe('a method that a sheet names', () => {
  const shown = graph.reachedFrom(ASKED.slice(0, 3));
  const texts = readdirSync(folder('src/physics')).map((file) => ({
    file,
    text: readFileSync(new URL(file, folder('src/physics')), 'utf8'),
  }));
  test.each(METHODS.map((method) => [method.run.name, method] as const))(
    '%s is run by an estimate or for a sheet, and its file names the source',
    (name, method) => {
      const place = texts.find(({ text }) => text.includes(`export function ${name}(`));
      expect(shown.has(`physics/${place!.file}#${name}`)).toBe(true);
      expect(place!.text.replace(/\n \* /g, ' ')).toContain(method.source);
    },
  );
});
