/** What is tried beside a design at a tap: the next plate down and up, a wrap, another shape, a taller stack. */
import type { Design, PartName } from '../design/design.js';
import { PARTS } from '../design/stations.js';
import { convert, formatPlate, inchText, siIn } from '../units/index.js';
import { capital } from '../words/plainText.js';
import { sizeInShape } from '../study/compare/equalShape.js';
import { changeShape, setPlate, wrapPart } from './designEdits.js';
import type { DesignText } from './designText.js';
import { nextPlate } from './sliders.js';
import { readText, type Option } from './option.js';

/** A change of plate that the page tries by itself. */
export interface Step {
  id: string;
  /** `All plate 3/16 in`, and what that is instead of: `1/4 in` */
  label: string;
  instead: string;
  text: DesignText;
  design: Design;
}

/** What the others are held against where it has no one plate. */
const AS_IT_IS = 'what is drawn';

type Way = 'thinner' | 'heavier';
const WAYS: readonly Way[] = ['thinner', 'heavier'];

/** All plate one step of the steel yard thinner, and heavier. */
export function allPlateSteps(option: Option): Step[] {
  return WAYS.flatMap((way) => plateStep(option, partsIn(option.design), `all-${way}`, way));
}

/** The same of each part alone, where there are several. */
export function partPlateSteps(option: Option): Step[] {
  const parts = partsIn(option.design);
  if (parts.length < 2) return [];
  return parts.flatMap((part) => WAYS.flatMap((way) => plateStep(option, [part], `${part}-${way}`, way)));
}

function partsIn(design: Design): PartName[] {
  return PARTS.filter((part) => design[part]);
}

function plateStep({ text, design }: Option, parts: PartName[], id: string, way: Way): Step[] {
  const changed = text.copy();
  const plates = parts.map((part) => nextPlate(design[part]!.plate, way));
  if (plates.some((plate) => plate === undefined)) return [];
  parts.forEach((part, i) => setPlate(changed, part, plates[i]!));
  const same = (all: (string | undefined)[]) => all.every((each) => each === all[0]);
  const now = parts.map((part) => formatPlate(design[part]!.plate));
  const of = parts.length > 1 ? 'All plate' : `${capital(parts[0])} plate`;
  const label = same(plates) ? `${of} ${plates[0]}` : `${of} one step ${way}`;
  return step(id, label, changed, same(now) ? now[0] : AS_IT_IS);
}

const WRAP = '1 in';
/** What another shape keeps. */
const EQUAL = ['volume', 'weight'] as const;
const HIGHER = siIn('length', 6, 'in');

/** Everything else that is worth a tap. */
export function otherSteps({ text, design }: Option): Step[] {
  const higher = text.copy();
  design.stacks.forEach(({ height }, i) => higher.set(['stacks', i, 'height'], inchText(height + HIGHER)));
  return [
    ...partsIn(design).flatMap((part) => {
      if ((design[part]!.insulation?.thickness ?? 0) > 0) return [];
      const changed = text.copy();
      wrapPart(changed, part, WRAP);
      return step(`${part}-wrap`, `${capital(part)} wrapped ${WRAP}`, changed);
    }),
    ...(['firebox', 'chamber'] as const).flatMap((part) => {
      const own = design[part];
      if (!own) return [];
      const shape = own.shape === 'round' ? 'square' : 'round';
      return EQUAL.flatMap((equal) => {
        const across = sizeInShape(design, part, shape, equal);
        if (across === null) return [];
        const changed = text.copy();
        changeShape(changed, part, shape, design);
        for (const key of shape === 'round' ? ['diameter'] : ['width', 'height']) {
          changed.set([part, key], `${convert('length', across, 'shop', { unit: 'in' }).toFixed(2)} in`);
        }
        const id = equal === 'volume' ? `${part}-${shape}` : `${part}-${shape}-${equal}`;
        return step(id, `${capital(shape)} ${part}, same ${equal}`, changed);
      });
    }),
    ...(design.stacks.length > 0 ? step('stack', 'Stack 6 in higher', higher) : []),
  ];
}

/** Nothing where that makes no pit. */
function step(id: string, label: string, text: DesignText, instead = AS_IT_IS): Step[] {
  const read = readText(text);
  return 'faults' in read ? [] : [{ id, label, instead, text, design: read.design }];
}
