/** What can be changed on the page: one row a control, made for the parts that a design has. */
import { DEFAULT_INSULATION_NAME, INSULATION_NAMES } from './insulationNames.js';
import type { Design, HorizontalPart, Insulation, PartName } from '../design/design.js';
import type { Kind } from '../units/index.js';
import { changeShape, setPipeSize, setPlate } from './designEdits.js';
import type { DesignText, FieldPath } from './designText.js';
import * as slide from './sliders.js';

interface Base {
  /** unique: the field's path in the design file */
  id: string;
  label: string;
  path: FieldPath;
  /** other than by setting the field alone */
  apply?: (text: DesignText, value: string, design: Design) => void;
}

export interface QuantityControl extends Base {
  type: 'quantity';
  kind: Kind;
  slider: slide.Slider;
  /** SI value where the file leaves the field out */
  value: number;
}

export interface ChoiceControl extends Base {
  type: 'choice';
  choices: { value: string; label: string }[];
  value: string;
}

export interface WordsControl extends Base {
  type: 'words';
}

export type Control = QuantityControl | ChoiceControl | WordsControl;

export interface ControlGroup {
  title: string;
  /** shown closed at first */
  closed?: boolean;
  controls: Control[];
}

type Extra = Pick<QuantityControl, 'apply'>;

function quantity(
  label: string,
  path: FieldPath,
  kind: Kind,
  slider: slide.Slider,
  value: number,
  extra: Extra = {},
): QuantityControl {
  return { type: 'quantity', id: idOf(path), label, path, kind, slider, value, ...extra };
}

/** `firebox.intakes[0].diameter`, as faults name it. */
export function idOf(path: FieldPath): string {
  return path.map((part, i) => (typeof part === 'number' ? `[${part}]` : i === 0 ? part : `.${part}`)).join('');
}

/** Every control for a design, in groups. The same for every design with the same parts and shapes. */
export function controlsFor(design: Design, text: DesignText): ControlGroup[] {
  const { chamber, upright, fire, site, throat } = design;
  const into = chamber ? 'chamber' : 'upright';
  return [
    {
      title: 'Firebox',
      controls: [
        ...horizontal('firebox', design.firebox),
        ...vents(design, text),
        quantity(`Throat to the ${into}`, ['throat', 'area'], 'area', slide.squareInches(20, 300, 1), throat.area),
      ],
    },
    ...(chamber ? [{ title: 'Chamber', controls: horizontal('chamber', chamber) }] : []),
    ...(upright ? [{ title: 'Upright', controls: uprightControls(design) }] : []),
    { title: design.stacks.length > 1 ? 'Stacks' : 'Stack', controls: stackControls(design) },
    {
      title: 'Fire and weather',
      controls: [
        quantity('Fire', ['fire', 'heat'], 'power', slide.heatPerHour(10_000, 250_000, 1_000), fire.heat),
        quantity('Cook at', ['fire', 'target'], 'temperature', slide.fahrenheit(150, 450, 5), fire.target),
        quantity('Outdoor air', ['site', 'air'], 'temperature', slide.fahrenheit(-20, 110, 1), site.air),
        quantity('Wind', ['site', 'wind'], 'speed', slide.milesPerHour(0, 30, 0.5), site.wind),
      ],
    },
    { title: 'Heights above the ground', closed: true, controls: heights(design) },
    {
      title: 'Name and job',
      closed: true,
      controls: [
        { type: 'words', id: 'name', label: 'Design', path: ['name'] },
        { type: 'words', id: 'shop', label: 'Shop', path: ['shop'] },
        { type: 'words', id: 'job', label: 'Job', path: ['job'] },
      ],
    },
  ];
}

function horizontal(name: 'firebox' | 'chamber', part: HorizontalPart): Control[] {
  const size = slide.inches(12, 48, 0.5);
  const cross: Control[] =
    part.shape === 'round'
      ? [
          quantity('Diameter', [name, 'diameter'], 'length', size, part.width, {
            apply: (text, value, design) => setPipeSize(text, [name], 'plate', value, design[name]?.plate),
          }),
        ]
      : [
          quantity('Width', [name, 'width'], 'length', size, part.width),
          quantity('Height', [name, 'height'], 'length', size, part.height),
        ];
  return [
    {
      type: 'choice',
      id: `${name}.shape`,
      label: 'Shape',
      path: [name, 'shape'],
      choices: [
        { value: 'round', label: 'round' },
        { value: 'square', label: 'square' },
      ],
      value: part.shape,
      apply: (text, value, design) => changeShape(text, name, value, design),
    },
    ...cross,
    quantity('Length', [name, 'length'], 'length', slide.inches(12, name === 'firebox' ? 60 : 144, 1), part.length),
    plate(name, part.plate),
    ...insulation(name, part.insulation),
  ];
}

function plate(name: PartName, own: number): Control {
  return quantity('Plate', [name, 'plate'], 'plate', slide.plate, own, {
    apply: (text, value, design) => setPlate(text, name, value, design),
  });
}

function insulation(name: 'firebox' | 'chamber' | 'upright', own: Insulation | undefined): Control[] {
  const thickness = quantity(
    'Insulation',
    [name, 'insulation', 'thickness'],
    'length',
    slide.inches(0, 6, 0.5),
    own?.thickness ?? 0,
    {
      apply: (text, value) => {
        if (!text.has([name, 'insulation'])) text.set([name, 'insulation', 'material'], DEFAULT_INSULATION_NAME);
        text.set([name, 'insulation', 'thickness'], value);
      },
    },
  );
  if (!own || own.thickness === 0) return [thickness];
  return [
    thickness,
    {
      type: 'choice',
      id: `${name}.insulation.material`,
      label: 'Insulation of',
      path: [name, 'insulation', 'material'],
      choices: INSULATION_NAMES.map((value) => ({ value, label: value })),
      value: own.material,
    },
  ];
}

function vents({ firebox }: Design, text: DesignText): Control[] {
  return firebox.intakes.flatMap((vent, i) => {
    const path = (key: string): FieldPath => ['firebox', 'intakes', i, key];
    const own = firebox.intakes.length > 1 ? ` ${i + 1}` : '';
    const across = Math.sqrt((4 * vent.area) / Math.PI);
    const size = slide.inches(1, 12, 0.25);
    const sizes = text.has(path('diameter'))
      ? [quantity(`Vent${own} diameter`, path('diameter'), 'length', size, across)]
      : text.has(path('area'))
        ? [quantity(`Vent${own} area`, path('area'), 'area', slide.squareInches(1, 120, 1), vent.area)]
        : [
            quantity(`Vent${own} width`, path('width'), 'length', size, across),
            quantity(`Vent${own} height`, path('height'), 'length', size, across),
          ];
    return [
      quantity(`Vents${own}, how many`, path('count'), 'number', slide.count(1, 8), vent.count, {
        apply: (target, value) => target.set(path('count'), /^\d+$/.test(value.trim()) ? Number(value) : value),
      }),
      ...sizes,
      quantity(`Vents${own} open`, path('open'), 'share', slide.percent(1), vent.open),
    ];
  });
}

function uprightControls({ upright }: Design): Control[] {
  if (!upright) return [];
  const side = slide.inches(12, 48, 0.5);
  return [
    quantity('Width', ['upright', 'width'], 'length', side, upright.width),
    quantity('Depth', ['upright', 'depth'], 'length', side, upright.depth),
    quantity('Height', ['upright', 'height'], 'length', slide.inches(12, 96, 1), upright.height),
    plate('upright', upright.plate),
    ...insulation('upright', upright.insulation),
    ...(upright.opening
      ? [
          quantity(
            'Opening from the chamber',
            ['upright', 'opening', 'area'],
            'area',
            slide.squareInches(20, 300, 1),
            upright.opening.area,
          ),
        ]
      : []),
  ];
}

function stackControls({ stacks }: Design): Control[] {
  return stacks.flatMap((stack, i) => {
    const own = stacks.length > 1 ? `Stack ${i + 1} ` : '';
    const label = (words: string) => (own ? own + words.toLowerCase() : words);
    return [
      quantity(label('Diameter'), ['stacks', i, 'diameter'], 'length', slide.inches(3, 14, 0.5), stack.diameter, {
        apply: (text, value, design) => setPipeSize(text, ['stacks', i], 'wall', value, design.stacks[i]?.wall),
      }),
      quantity(label('Height'), ['stacks', i, 'height'], 'length', slide.inches(6, 120, 1), stack.height),
    ];
  });
}

function heights({ firebox, chamber, upright, throat, stacks }: Design): Control[] {
  const height = (label: string, path: FieldPath, value: number) =>
    quantity(label, path, 'length', slide.inches(4, 120, 0.5), value);
  return [
    height('Middle of the firebox', ['firebox', 'centre'], firebox.centre),
    ...firebox.intakes.map((vent, i) =>
      height(
        firebox.intakes.length > 1 ? `Middle of vents ${i + 1}` : 'Middle of the vents',
        ['firebox', 'intakes', i, 'centre'],
        vent.centre,
      ),
    ),
    height('Middle of the throat', ['throat', 'centre'], throat.centre),
    ...(chamber ? [height('Middle of the chamber', ['chamber', 'centre'], chamber.centre)] : []),
    ...(upright ? [height('Middle of the upright', ['upright', 'centre'], upright.centre)] : []),
    ...(upright?.opening
      ? [height('Middle of its opening', ['upright', 'opening', 'centre'], upright.opening.centre)]
      : []),
    ...stacks.map((stack, i) =>
      height(stacks.length > 1 ? `Foot of stack ${i + 1}` : 'Foot of the stack', ['stacks', i, 'base'], stack.base),
    ),
  ];
}
