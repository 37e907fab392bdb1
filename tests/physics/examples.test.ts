import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';

// Every public function of physics says what it is and shows a call; here the calls are made. `@example call // value
// unit` holds to half a unit of the value's last digit.

const folder = new URL('../../src/physics/', import.meta.url);
const files = readdirSync(folder).filter((name) => name.endsWith('.ts'));

const loaded = await Promise.all(
  files.map(async (file) => ({
    file,
    text: readFileSync(new URL(file, folder), 'utf8'),
    module: (await import(new URL(file, folder).href)) as Record<string, unknown>,
  })),
);
const scope = Object.assign({}, ...loaded.map(({ module }) => module)) as Record<string, unknown>;
const names = Object.keys(scope);

/** What a call written in a comment gives, with everything that physics exports at hand. */
function evaluate(call: string): unknown {
  return (new Function(...names, `return ${call};`) as (...all: unknown[]) => unknown)(
    ...names.map((name) => scope[name]),
  );
}

/** The comment right before an exported function. */
function docOf(text: string, name: string): string {
  const before = text.slice(0, text.indexOf(`export function ${name}(`));
  const start = before.lastIndexOf('/**');
  return start >= 0 && /\*\/\s*$/.test(before) ? before.slice(start) : '';
}

interface Example {
  call: string;
  value: string;
}

function examplesIn(doc: string): Example[] {
  return [...doc.matchAll(/@example (.+?) \/\/ (-?\d[\d.]*(?:e[-+]?\d+)?)/g)].map(([, call, value]) => ({
    call,
    value,
  }));
}

/** Half a unit of the last digit that is written; of whole numbers the zeros at the end do not count as written. */
function halfDigit(value: string): number {
  const [digits, power = '0'] = value.split('e');
  const decimals = digits.split('.')[1];
  const place = decimals ? -decimals.length : (/[1-9](0*)$/.exec(digits)?.[1].length ?? 0);
  return 0.5 * 10 ** (place + Number(power));
}

const functions = loaded.flatMap(({ file, text, module }) =>
  Object.keys(module)
    .filter((name) => typeof module[name] === 'function')
    .map((name) => ({ file, name, doc: docOf(text, name) })),
);

test('no two files of physics export the same name', () => {
  expect(names.length).toBe(loaded.reduce((sum, { module }) => sum + Object.keys(module).length, 0));
});

describe.each(functions)('$file $name', ({ doc, name }) => {
  test('says what, with which parameters, in which unit, from what source', () => {
    expect(doc).toMatch(/^\/\*\*\n \* [A-Z]/);
    expect(doc).toMatch(/@returns/);
    expect(doc).toMatch(/Reference: /);
    if (!doc.includes(' emptyOpeningFlow')) expect(doc).toMatch(/@param/);
  });

  test('shows a call that gives what it says', () => {
    const examples = examplesIn(doc);
    expect(examples.length).toBeGreaterThan(0);
    for (const { call, value } of examples) {
      expect(call).toContain(`${name}(`);
      const given = evaluate(call);
      expect(Math.abs(Number(given) - Number(value)), `${call} gives ${given}`).toBeLessThanOrEqual(
        halfDigit(value) + 1e-9,
      );
    }
  });
});

test('the runner itself sees a wrong value', () => {
  const [example] = examplesIn(' * @example biot(15, 0.00635, 50) // 0.0020 of nothing');
  expect(example).toEqual({ call: 'biot(15, 0.00635, 50)', value: '0.0020' });
  expect(Math.abs((evaluate(example.call) as number) - 0.002)).toBeGreaterThan(halfDigit(example.value));
  expect(halfDigit('101.5')).toBeCloseTo(0.05, 12);
  expect(halfDigit('3280')).toBe(5);
  expect(halfDigit('1.846e-5')).toBeCloseTo(0.5e-8, 15);
});
