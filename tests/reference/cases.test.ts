import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { readMisses } from '../../src/verify/misses.js';
import { readCases, type Case } from '../../src/verify/readCases.js';
import { REGISTRY } from '../../src/verify/registry.js';

// What the rows come to, tests/verify/evidence asks.

const folder = new URL('../../reference/', import.meta.url);
const read = (name: string) => readFileSync(new URL(name, folder), 'utf8');
const files = readdirSync(folder).filter((name) => /^cases-.*\.csv$/.test(name));

const tables = files.map((file) => ({ file, ...readCases(read(file), file, REGISTRY) }));
const all: Case[] = tables.flatMap((table) => table.cases);
const { faults } = readMisses(read('misses.csv'), 'misses.csv', new Set(all.map((each) => each.id)));

test('every case file is read without a fault', () => {
  const found = [...tables.flatMap((table) => table.faults), ...faults];
  expect(found.map(({ file, line, id, field, message }) => `${file}:${line} ${id} ${field} ${message}`)).toEqual([]);
});

test('no id stands twice in all files together', () => {
  expect(new Set(all.map((each) => each.id)).size).toBe(all.length);
});
