/** Where the drawing of a pit can be taken hold of: what is dragged, which way, and the parts that a tap opens. */
import type { Design } from '../design/design.js';
import type { Box } from '../draw/box.js';
import { pitLayout, type Span } from '../draw/pit/pitLayout.js';
import type { ViewPlace } from '../draw/sheet.js';
import { capital } from '../words/plainText.js';

/** A place of the drawing that sets a field. */
export interface Grip {
  /** of the control that it moves */
  field: string;
  label: string;
  x: number;
  y: number;
  /** the field grows by so many metres a pixel to the right, or downwards; 0: not that way */
  perRight: number;
  perDown: number;
}

/** A part of the pit as it lies on the drawing. */
interface PartBox {
  /** what the paths of its fields begin with */
  block: string;
  label: string;
  left: number;
  top: number;
  width: number;
  height: number;
}

/** How far a handle keeps from what is written at its place [px]. */
const COLLAR = 8;

/** Half of a handle as it is seen, along its bar and across [px]. */
const HANDLE = { long: 8, thick: 5 };

/** What the handles cover of the drawing. */
export function gripBoxes(design: Design, side: ViewPlace): Box[] {
  return gripsOf(design, side).map(({ x, y, perDown }) => {
    const [half, high] = perDown === 0 ? [HANDLE.thick, HANDLE.long] : [HANDLE.long, HANDLE.thick];
    return { left: x - half, right: x + half, top: y - high, bottom: y + high };
  });
}

/** @param side where the side view stands on the drawing */
export function gripsOf(design: Design, side: ViewPlace): Grip[] {
  const layout = pitLayout(design);
  const metre = 1 / side.scale;
  const x = (metres: number) => side.left + metres * side.scale;
  const y = (height: number) => side.ground - height * side.scale;
  const middle = ({ low, high }: Span) => (low + high) / 2;
  const { firebox, chamber, upright, stacks } = layout;
  const right = { perRight: metre, perDown: 0 };
  const up = { perRight: 0, perDown: -metre };
  const many = stacks.length > 1;
  const next = chamber ?? upright;
  const across = (part: 'firebox' | 'chamber', span: Span): Grip => {
    const round = design[part]!.shape === 'round';
    return {
      field: `${part}.${round ? 'diameter' : 'height'}`,
      label: `${round ? 'Diameter' : 'Height'} of the ${part}`,
      x: x((span.left + span.right) / 2),
      y: y(span.low),
      // its middle stays
      perRight: 0,
      perDown: 2 * metre,
    };
  };
  return [
    {
      field: 'firebox.length',
      label: 'Length of the firebox',
      x: x(firebox.left),
      y: y(middle(firebox)),
      perRight: -metre,
      perDown: 0,
    },
    across('firebox', firebox),
    ...(chamber
      ? [
          across('chamber', chamber),
          {
            field: 'chamber.length',
            label: 'Length of the chamber',
            x: x(chamber.right),
            y: y(middle(chamber)),
            ...right,
          },
        ]
      : []),
    ...(upright
      ? [
          {
            field: 'upright.height',
            label: 'Height of the upright',
            // beside a stack on its roof, and off what is read under it
            x: x(upright.right),
            y: y(upright.high),
            // its middle stays
            perRight: 0,
            perDown: -2 * metre,
          },
        ]
      : []),
    ...(next && design.throat.through !== 'top'
      ? [
          {
            field: 'throat.centre',
            label: 'Height of the throat',
            x: x(next.left),
            y: y(design.throat.centre),
            ...up,
          },
        ]
      : []),
    ...stacks.map((tube, i) => ({
      field: `stacks[${i}].height`,
      label: many ? `Height of stack ${i + 1}` : 'Height of the stack',
      x: x((tube.left + tube.right) / 2),
      // under the size that stands over it
      y: y(tube.high) + COLLAR,
      ...up,
    })),
  ];
}

/** Boxes of the parts in a view, for a press that opens their fields. */
export function partBoxes(design: Design, side: ViewPlace): PartBox[] {
  const { firebox, chamber, upright, stacks } = pitLayout(design);
  const box = (block: string, span: Span | undefined, label = capital(block)): PartBox[] =>
    span
      ? [
          {
            block,
            label,
            left: side.left + span.left * side.scale,
            top: side.ground - span.high * side.scale,
            width: (span.right - span.left) * side.scale,
            height: (span.high - span.low) * side.scale,
          },
        ]
      : [];
  return [
    ...stacks.flatMap((tube, i) => box('stacks', tube, stacks.length > 1 ? `Stack ${i + 1}` : 'Stack')),
    ...box('upright', upright),
    ...box('chamber', chamber),
    ...box('firebox', firebox),
  ];
}
