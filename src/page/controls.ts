/**
 * What can be changed on the page: every field whose row has a slider or a choice to offer, where a design has the
 * field.
 */
import type { Design, PartName } from '../design/design.js';
import { IN_FILE } from '../design/fields.js';
import type { Rows } from '../design/fields/fieldType.js';
import { pathText, type Path } from '../design/path.js';
import type { Kind } from '../units/index.js';
import { changeShape, setPipeSize, setPlate, wrapPart } from './designEdits.js';
import { givenGroups } from './givenControls.js';
import type { DesignText } from './designText.js';
import { sliderOf, type Slider } from './sliders.js';

interface Base {
  /** unique: the field's path in the design file */
  id: string;
  label: string;
  path: Path;
  /** other than by setting the field alone */
  apply?: (text: DesignText, value: string, design: Design) => void;
}

/** A field with a unit: text and slider. */
export interface QuantityControl extends Base {
  type: 'quantity';
  kind: Kind;
  slider: Slider;
  /** SI value where the file leaves the field out */
  value: number;
}

/** A field that takes one of several names. */
export interface ChoiceControl extends Base {
  type: 'choice';
  choices: { value: string; label: string }[];
  value: string;
}

/** A field that is typed as text alone. */
export interface WordsControl extends Base {
  type: 'words';
}

/** A field as the file gives it, in the file's own words. */
export interface GivenControl extends Base {
  type: 'given';
}

/** A field of the design as the page lets it be edited. */
export type Control = QuantityControl | ChoiceControl | WordsControl | GivenControl;

/** Fields that stand under one heading. */
export interface ControlGroup {
  title: string;
  /** shown closed at first */
  closed?: boolean;
  controls: Control[];
}

/** Every control for a design, in groups. The same for every design with the same parts and shapes. */
export function controlsFor(design: Design, text: DesignText): ControlGroup[] {
  const { chamber, upright } = design;
  const all = (...blocks: (keyof Design)[]) => blocks.flatMap((key) => controlsOf(design, text, key));
  const low = (...blocks: (keyof Design)[]) =>
    all(...blocks).flatMap(({ height, control }) => (height ? [] : [control]));
  const parts = ['firebox', 'throat', 'chamber', 'upright', 'stacks'] as const;
  const words = (label: string, key: string): Control => ({ type: 'words', id: key, label, path: [key] });
  const groups: ControlGroup[] = [
    { title: 'Firebox', controls: low('firebox', 'throat') },
    ...(chamber ? [{ title: 'Chamber', controls: low('chamber') }] : []),
    ...(upright ? [{ title: 'Upright', controls: low('upright') }] : []),
    { title: design.stacks.length > 1 ? 'Stacks' : 'Stack', controls: low('stacks') },
    { title: 'Fire and weather', controls: low('fire', 'site') },
    {
      title: 'Heights above the ground',
      closed: true,
      controls: all(...parts).flatMap(({ height, control }) => (height ? [control] : [])),
    },
    {
      title: 'Name and job',
      closed: true,
      controls: [words('Design', 'name'), words('Shop', 'shop'), words('Job', 'job')],
    },
  ];
  const shown = new Set(groups.flatMap(({ controls }) => controls.map(({ id }) => id)));
  return [...groups, ...givenGroups(text, shown)];
}

type Tree = Readonly<Record<string, unknown>>;
type Placed = { height: boolean; control: Control };

/** What one of a design's own blocks offers, in the order of its rows. */
function controlsOf(design: Design, text: DesignText, key: keyof Design): Placed[] {
  const whole = design as unknown as Tree;
  const next = design.chamber ? 'chamber' : 'upright';

  function fieldsOf(rows: Rows, own: Tree, path: Path, place = 0, of = 1): Placed[] {
    return Object.entries(rows).flatMap(([name, { belongs, row, rows: inside, offer }]): Placed[] => {
      const at = [...path, name];
      if (belongs && !belongs(own, whole)) return [];
      // how much of it comes before of what; that of a stack is left to the file
      if (name === 'insulation' && inside) {
        return key === 'stacks' ? [] : fieldsOf(inside, (own[name] ?? BARE) as Tree, at).reverse();
      }
      const value = own[name];
      // a list of bare heights is left to the file
      if (Array.isArray(value)) {
        return inside ? value.flatMap((item, i) => fieldsOf(inside, item, [...at, i], i, value.length)) : [];
      }
      if (inside) return value === undefined ? [] : fieldsOf(inside, value as Tree, at, place, of);
      const base = { id: pathText(at), path: at, apply: editOf(at) };
      if (offer && own.thickness !== 0) {
        const choices = offer.names.map((each) => ({ value: each, label: each }));
        const control: Control = { ...base, type: 'choice', label: offer.label, choices, value: value as string };
        return [{ height: false, control }];
      }
      if (!row?.slider || (isVentSize(at) && !text.has(at))) return [];
      const { label, steps, height = false } = row.slider;
      const words = typeof label === 'string' ? label.replace('{next}', next) : label[of > 1 ? 1 : 0];
      const { kind } = row.range;
      const control: Control = {
        ...base,
        type: 'quantity',
        label: words.replace('#', String(place + 1)),
        kind,
        slider: sliderOf(kind, steps),
        value: (value ?? acrossOf(own)) as number,
      };
      return [{ height, control }];
    });
  }
  return fieldsOf({ [key]: IN_FILE[key] }, whole, []);
}

const BARE = { thickness: 0 };

/** A vent has the one size that the file gives. */
function isVentSize([, list, , key]: Path): boolean {
  return list === 'intakes' && ['diameter', 'width', 'height', 'area'].includes(String(key));
}

/** What a design keeps of a diameter: the width of a round part, the area of a vent. */
function acrossOf({ width, area }: Tree): number {
  return (width as number | undefined) ?? Math.sqrt((4 * (area as number)) / Math.PI);
}

/** How a field is set where that takes more than itself. */
function editOf(path: Path): Base['apply'] {
  const [part, second] = path as readonly [PartName, string | number];
  switch (
    path
      .filter((step) => typeof step === 'string')
      .slice(1)
      .join('.')
  ) {
    case 'shape':
      return (text, value, design) => changeShape(text, part as 'firebox' | 'chamber', value, design);
    case 'diameter':
      return typeof second === 'number'
        ? (text, value, { stacks }) => setPipeSize(text, ['stacks', second], 'wall', value, stacks[second]?.wall)
        : (text, value, design) => setPipeSize(text, [part], 'plate', value, design[part]?.plate);
    case 'plate':
      return (text, value) => setPlate(text, part, value);
    case 'insulation.thickness':
      return (text, value) => wrapPart(text, part, value);
    case 'intakes.count':
      return (text, value) => text.set(path, /^\d+$/.test(value.trim()) ? Number(value) : value);
    default:
      return undefined;
  }
}
