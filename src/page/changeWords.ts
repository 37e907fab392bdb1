/** What an option changes, in a few words: its name until someone gives it one. */
import { PARTS } from '../design/stations.js';
import { format } from '../units/index.js';
import { capital } from '../words/plainText.js';
import { controlsFor, type Control } from './controls.js';
import type { Option } from './option.js';

type Pit = Pick<Option, 'design' | 'text'>;

/** Changes told by name; of more only how many there are. */
const TOLD = 2;
const SIZES = ['diameter', 'width', 'height'];

/**
 * `Chamber plate 3/8 in`, `All plate 3/16 in`, `Square firebox`, `Stack height 42 in, wind 8 mph and 1 more`; empty
 * where nothing differs.
 */
export function changeWords(base: Pit, own: Pit): string {
  const before = new Map(valuesOf(base).map((each) => [each.control.id, each]));
  const changed = valuesOf(own).filter((each) => !alikeValues(before.get(each.control.id), each));
  const reshaped = changed.flatMap(({ control: { path } }) => (path[1] === 'shape' ? [path[0]] : []));
  const told = changed.filter(({ control: { id, type, path } }) => {
    // what comes along with a wrap, or with another shape, goes without saying
    if (before.has(id)) return !(type === 'given' && path.at(-1) === 'plate' && follows(path, own));
    return type !== 'choice' && type !== 'given' && !(reshaped.includes(path[0]) && SIZES.includes(String(path[1])));
  });
  const plates = PARTS.filter((part) => own.design[part]).map((part) => `${part}.plate`);
  const plated = told.filter(({ control: { id } }) => plates.includes(id));
  const alike =
    plates.length > 1 && plated.length === plates.length && plated.every(({ value }) => value === plated[0].value);
  const words = [
    ...(alike ? [`all plate ${plated[0].value}`] : []),
    ...told.filter((each) => !alike || !plated.includes(each)).map(({ control, value }) => changeOf(control, value)),
  ];
  const more = words.length > TOLD ? ` and ${words.length - TOLD} more` : '';
  return capital(`${words.slice(0, TOLD).join(', ')}${more}`);
}

/** A door's plate that is the part's own goes with it. */
function follows(path: Control['path'], { text }: Pit): boolean {
  return text.get(path) === text.get([path[0], 'plate']);
}

/** 1/4 in and 0.25 in are one; two pipes of a diameter may have other walls. */
function alikeValues(a: Valued | undefined, b: Valued): boolean {
  if (a?.value === b.value) return true;
  if (a?.control.type !== 'quantity' || b.control.type !== 'quantity' || /pipe/i.test(a.value + b.value)) return false;
  return Math.abs(a.control.value - b.control.value) <= 1e-9 * Math.abs(b.control.value);
}

interface Valued {
  control: Control;
  /** as the field shows it */
  value: string;
}

function valuesOf({ design, text }: Pit): Valued[] {
  return controlsFor(design, text).flatMap(({ controls }) =>
    controls.filter(({ type }) => type !== 'words').map((control) => ({ control, value: shown(control, text) })),
  );
}

function shown(control: Control, text: Option['text']): string {
  if (control.type === 'choice') return control.value;
  return text.get(control.path) ?? (control.type === 'quantity' ? format(control.kind, control.value) : '');
}

/** The control's own label behind the part that it is of, and what it is now. */
function changeOf({ path: [block, second], label }: Control, value: string): string {
  if (second === 'shape') return `${value} ${block}`;
  const own = label.slice(0, 1).toLowerCase() + label.slice(1);
  const part = block === 'stacks' ? 'stack' : String(block);
  const plain = block === 'site' || block === 'fire' || block === 'throat' || own.includes(part);
  return `${plain ? own : `${part} ${own}`} ${value}`;
}
