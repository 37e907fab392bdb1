import { visible } from '../words/plainText.js';

/**
 * A result as JSON: objects indented, lists of plain values on one line, a newline at the end. Keys keep their order,
 * so the same result is the same bytes.
 *
 * @throws RangeError when a number is not finite: JSON would turn it into null without a word
 */
export function toJson(value: unknown): string {
  return `${visible(write(value, '', 'result'))}\n`;
}

/**
 * The same on one line, without the newline.
 *
 * @throws RangeError when a number is not finite
 */
export function toJsonLine(value: object): string {
  const line = JSON.stringify(value, (key, item: unknown) => {
    if (typeof item === 'number' && !Number.isFinite(item)) throw new RangeError(`${key} is ${item}`);
    return item;
  });
  return visible(line);
}

function write(value: unknown, indent: string, path: string): string {
  if (typeof value === 'number' && !Number.isFinite(value)) throw new RangeError(`${path} is ${value}`);
  if (value === null || typeof value !== 'object') return JSON.stringify(value) ?? 'null';
  const deeper = `${indent}  `;
  if (Array.isArray(value)) {
    const items = value.map((item, index) => write(item, deeper, `${path}[${index}]`));
    if (value.every((item) => item === null || typeof item !== 'object')) return `[${items.join(', ')}]`;
    return `[\n${items.map((item) => deeper + item).join(',\n')}\n${indent}]`;
  }
  const entries = Object.entries(value).filter(([, item]) => item !== undefined);
  if (entries.length === 0) return '{}';
  const lines = entries.map(
    ([key, item]) => `${deeper}${JSON.stringify(key)}: ${write(item, deeper, `${path}.${key}`)}`,
  );
  return `{\n${lines.join(',\n')}\n${indent}}`;
}
