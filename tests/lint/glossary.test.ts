import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';

const root = new URL('../../', import.meta.url).pathname;
const page = readFileSync(join(root, 'DEVELOPERS.md'), 'utf8');
const glossary = page.slice(page.indexOf('\nWords:\n'), page.indexOf('\n## Adding things'));
const words = [...glossary.matchAll(/^- \*\*(.+)\*\*:/gm)].flatMap(([, each]) => each.split(', '));

const sources = readdirSync(join(root, 'src'), { recursive: true, encoding: 'utf8' })
  .filter((file) => file.endsWith('.ts'))
  .map((file) => readFileSync(join(root, 'src', file), 'utf8'));

/** In running text, or as one name: `surface node`, `surfaceNode`. */
function used(word: string): number {
  const [first, ...rest] = word.split(/[ -]/);
  const joined = first + rest.map((each) => each[0].toUpperCase() + each.slice(1)).join('');
  const either = new RegExp(`\\b${word.replace(/[ -]/g, '[ -]')}\\b|\\b${joined}`, 'i');
  return sources.filter((text) => either.test(text)).length;
}

describe('the glossary of DEVELOPERS.md', () => {
  it('is there, each word once', () => {
    expect(words.length).toBeGreaterThan(15);
    expect(new Set(words).size).toBe(words.length);
  });

  it.each(words)('%s: code says so, in more files than one', (word) => {
    expect(used(word)).toBeGreaterThan(1);
  });
});
