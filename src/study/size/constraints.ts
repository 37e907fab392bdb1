/** What a builder asks of a size, one thing at a time, so that each can be left out to see what it costs. */
import type { Design, Stack } from '../../design/design.js';
import { KEPT, type Kept } from '../../design/fields/size.js';
import { stackLengths } from '../../design/stackBounds.js';
import { stackSection } from '../../design/stackSection.js';
import type { Tube } from '../../design/tubeText.js';
import { stackTries, type StackTry } from './search.js';

/** What a design may ask of the sizes. */
export type ConstraintKey = Kept | 'least' | 'most' | 'shapes' | 'onHand';

/** What the design asks for. */
export function constraintsOf({ size }: Design): ConstraintKey[] {
  if (!size) return [];
  const { keep, stack, onHand } = size;
  return [
    ...KEPT.filter((each) => keep.includes(each)),
    ...(['least', 'most'] as const).filter((each) => stack?.[each] !== undefined),
    ...(stack?.shapes?.length === 1 ? (['shapes'] as const) : []),
    ...(onHand ? (['onHand'] as const) : []),
  ];
}

/** The design with one of those left out. */
function withoutConstraint(design: Design, key: ConstraintKey): Design {
  const size = design.size!;
  const stack = { over: 'lid' as const, ...size.stack };
  const changed = (): Partial<NonNullable<Design['size']>> => {
    switch (key) {
      case 'least':
      case 'most':
        return { stack: { ...stack, [key]: undefined } };
      case 'shapes':
        return { stack: { ...stack, shapes: ['round', 'square'] } };
      case 'onHand': {
        const here = new Set(size.onHand!.map((each) => each.size.shape ?? 'round'));
        return { onHand: undefined, stack: { ...stack, shapes: stack.shapes ?? [...here] } };
      }
      default:
        return { keep: size.keep.filter((each) => each !== key) };
    }
  };
  return { ...design, size: { ...size, ...changed() } };
}

/** The design as asked for, and with each thing asked for left out. */
export function variantsOf(design: Design): { key: ConstraintKey | null; design: Design }[] {
  return [
    { key: null, design },
    ...constraintsOf(design).map((key) => ({ key, design: withoutConstraint(design, key) })),
  ];
}

/** A stack to try, for the design as asked for or with one thing left out. */
export interface VariantTry extends StackTry {
  /** which of the variants it is for */
  of: number;
}

/** Does leaving it out change more than which stacks there are to choose from? */
export function changesMore(key: ConstraintKey | null): boolean {
  return key === 'intakes' || key === 'throat';
}

/** Stacks to try for all of several variants; those that the first one tries already are tried once. */
export function variantTries(design: Design): VariantTry[] {
  const name = ({ stack, height }: StackTry) => `${stack.name} ${height?.text}`;
  const variants = variantsOf(design);
  const asked = stackTries(variants[0].design);
  const known = new Set(asked.map(name));
  return variants.flatMap(({ key, design: each }, of) => {
    if (key === null) return asked.map((one) => ({ of, ...one }));
    const own = stackTries(each);
    return (changesMore(key) ? own : own.filter((one) => !known.has(name(one)))).map((one) => ({ of, ...one }));
  });
}

/** Sizes of two tubes that differ by no more than this share are the same. */
const SAME = 0.01;
/** Bounds count as kept to a sixteenth of an inch [m]. */
const SIXTEENTH = 0.0016;

/** What the drawn stack is not, of what is asked for: what stays stays in it. */
export function missedAsDrawn(design: Design): ConstraintKey[] {
  const { stacks, size } = design;
  const { least, most } = stackLengths({ ...design, size: size && { ...size, stack: size.stack ?? { over: 'lid' } } });
  const heights = stacks.map(({ height }) => height);
  const missed: Partial<Record<ConstraintKey, boolean>> = {
    least: size?.stack?.least !== undefined && Math.min(...heights) < least - SIXTEENTH,
    most: Math.max(...heights) > most + SIXTEENTH,
    shapes: stacks.some(({ shape = 'round' }) => !(size?.stack?.shapes ?? [shape]).includes(shape)),
    onHand: stacks.some((stack) => size?.onHand && !size.onHand.some((tube) => isOf(stack, tube))),
  };
  return constraintsOf(design).filter((key) => missed[key]);
}

function isOf(stack: Stack, { size, long }: Tube): boolean {
  const [own, there] = [stackSection(stack), stackSection(size as Stack)];
  const alike = (a: number, b: number) => Math.abs(a / b - 1) < SAME;
  return (
    own.round === there.round &&
    alike(own.across, there.across) &&
    alike(own.along, there.along) &&
    alike(stack.wall, size.wall) &&
    stack.height <= (long ?? Infinity) + SIXTEENTH
  );
}
