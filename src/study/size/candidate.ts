import type { Design } from '../../design/design.js';
import type { Tree } from '../../design/vary.js';
import type { Sized, StockStack, StockVents } from './stock.js';

/** One way to let the fire breathe, from stock. */
export interface Candidate {
  vents: StockVents;
  throat: Sized;
  stack: StockStack;
  height: Sized;
}

/**
 * The design with a candidate's vents, throat and stack: one row of vents where its first intake stands, every stack alike.
 *
 * @param open share that the intakes are open
 */
export function candidateDesign(design: Design, { vents, throat, stack, height }: Candidate, open = 1): Design {
  const { kind, count, area } = vents;
  return withAir(design, { kind, count, area, open }, throat.value, {
    diameter: stack.outside,
    wall: stack.thickness,
    height: height.value,
  });
}

/** The design with other vents, throat and stacks, all in SI. */
export function withAir(
  design: Design,
  vents: { kind?: 'disc' | 'slide'; count: number; area: number; open: number },
  throatArea: number,
  stack: { diameter: number; wall: number; height: number },
): Design {
  const { firebox, throat, stacks } = design;
  return {
    ...design,
    firebox: { ...firebox, intakes: [{ ...firebox.intakes[0], ...vents }] },
    throat: { ...throat, area: throatArea },
    // stock is round
    stacks: stacks.map((each) => ({ ...each, shape: undefined, width: undefined, depth: undefined, ...stack })),
  };
}

/** The fields of a design file that make the candidate, as they are written; the rest of the file stays as it is. */
export interface CandidateFields {
  firebox: { intakes: Tree[] };
  throat: Tree;
  stacks: Tree[];
}

/** What a candidate sets of an intake; the rest stays as written. */
const OF_VENTS = ['kind', 'count', 'open', 'diameter', 'width', 'height', 'area'];

function without(tree: Tree, keys: string[]): Tree {
  return Object.fromEntries(Object.entries(tree).filter(([key]) => !keys.includes(key)));
}

/**
 * What to write into a design file for a candidate.
 *
 * @param tree the file as it stands
 * @param open share that the intakes are open, a whole number of percent
 */
export function candidateFields(
  tree: Tree,
  { vents, throat, stack, height }: Candidate,
  open: number,
): CandidateFields {
  const file = tree as unknown as { firebox: { intakes: Tree[] }; throat: Tree; stacks: Tree[] };
  const size = vents.diameter
    ? { diameter: vents.diameter.text }
    : { width: vents.width!.text, height: vents.height!.text };
  const rest = without(file.firebox.intakes[0], OF_VENTS);
  return {
    firebox: {
      intakes: [{ kind: vents.kind, count: vents.count, ...size, open: `${Math.round(100 * open)} %`, ...rest }],
    },
    throat: { ...file.throat, area: throat.text },
    stacks: file.stacks.map((each) => ({
      ...without(each, ['wall', 'shape', 'width', 'depth']),
      diameter: stack.diameter.text,
      ...(stack.wall ? { wall: stack.wall.text } : {}),
      height: height.text,
    })),
  };
}

/** The file's tree with a candidate's fields in it. */
export function treeWith(tree: Tree, fields: CandidateFields): Tree {
  return {
    ...tree,
    firebox: { ...(tree.firebox as Tree), ...fields.firebox },
    throat: fields.throat,
    stacks: fields.stacks,
  };
}
