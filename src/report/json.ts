import type { Warning } from '../study/estimate/result.js';
import { inWords } from '../units/index.js';
import { visible } from '../words/plainText.js';
import { writtenWhere } from '../words/warningPlace.js';

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
    return asWritten(item);
  });
  return visible(line);
}

/** A warning as the file format has it, in words and its fire behind its place; all else as it is. */
function asWritten(value: unknown): unknown {
  return isWarning(value)
    ? { ...value, message: inWords(value.message), where: writtenWhere(value), fire: undefined }
    : value;
}

function isWarning(value: unknown): value is Warning {
  return typeof value === 'object' && value !== null && 'code' in value && 'where' in value && 'limits' in value;
}

function write(given: unknown, indent: string, path: string): string {
  const value = asWritten(given);
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
