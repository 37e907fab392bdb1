/** Fields that a design file gives and no slider stands for: doors, faces of other plate, linings, handles, prices. */
import { pathText, type Path } from '../design/path.js';
import type { Design } from '../design/design.js';
import { capital } from '../words/plainText.js';
import type { ControlGroup, GivenControl } from './controls.js';
import type { DesignText } from './designText.js';

/** What is shown elsewhere, or is the file's own business. */
const ELSEWHERE = new Set(['schema', 'name', 'shop', 'job', 'options', 'fitted']);
/** Blocks that have a group of their own. */
const GROUPS = ['firebox', 'throat', 'chamber', 'upright', 'stacks', 'fire'] as const;

type Scalar = string | number;
const isScalar = (value: unknown): value is Scalar => typeof value === 'string' || typeof value === 'number';

/** A closed group for each block that gives more than its sliders show, and one for the rest. */
export function givenGroups(text: DesignText, shown: ReadonlySet<string>): ControlGroup[] {
  const controls = Object.entries(text.tree())
    .filter(([key]) => !ELSEWHERE.has(key))
    .flatMap(([key, value]) => leavesOf(value, [key], []))
    .filter(({ id }) => !shown.has(id));
  const of = (block: string) => controls.filter(({ path }) => path[0] === block);
  const groups = GROUPS.map((block) => ({ title: `More of the ${block}`, controls: of(block) }));
  const rest = controls.filter(({ path }) => !GROUPS.some((block) => block === path[0]));
  return [...groups, { title: 'Wood and all else in the file', controls: rest }].flatMap((group) =>
    group.controls.length > 0 ? [{ ...group, closed: true }] : [],
  );
}

/** @param words for where it stands, below its block */
function leavesOf(value: unknown, path: Path, words: readonly string[]): GivenControl[] {
  if (isScalar(value)) return [given(path, words)];
  if (Array.isArray(value)) {
    if (value.length > 0 && value.every(isScalar)) return [{ ...given(path, words), apply: listEdit(path) }];
    return value.flatMap((item: unknown, i) => {
      const { name } = (item ?? {}) as { name?: unknown };
      return leavesOf(item, [...path, i], [...words, isScalar(name) ? String(name) : String(i + 1)]);
    });
  }
  if (value === null || typeof value !== 'object') return [];
  return Object.entries(value).flatMap(([key, inside]) => leavesOf(inside, [...path, key], [...words, plain(key)]));
}

/** `ashDoor` as `ash door`, of several the one: `doors` as `door`. */
function plain(key: string): string {
  const words = key.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
  return ['doors', 'grates', 'thermometers', 'intakes', 'contents'].includes(key) ? words.replace(/s$/, '') : words;
}

function given(path: Path, words: readonly string[]): GivenControl {
  const label = capital((words.length > 0 ? words : path.map(String)).join(' '));
  // of a block that shares its group with others
  const block = String(path[0]);
  const whole = GROUPS.some((each) => each === block) ? label : capital(`${plain(block)} ${words.join(' ')}`.trim());
  return { type: 'given', id: pathText(path), path, label: whole, apply: scalarEdit(path) };
}

type Apply = (text: DesignText, value: string, design: Design) => void;

/** A plain count stays one. */
function scalarEdit(path: Path): Apply {
  return (text, value) => text.set(path, /^\d+$/.test(value.trim()) ? Number(value) : value);
}

function listEdit(path: Path): Apply {
  return (text, value) =>
    text.setTree(
      path,
      value.split(/\s*,\s*/).filter((each) => each !== ''),
    );
}
