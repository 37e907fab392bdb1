import type { Design, Stack } from '../../design/design.js';
import type { Tree } from '../../design/vary.js';
import { withOpening } from '../air/cleanHold.js';
import type { Sized, StockStack, StockVents } from './stock.js';

/** One way to let the fire breathe; what is null stays as it is drawn. */
export interface Candidate {
  vents: StockVents | null;
  throat: Sized | null;
  stack: StockStack;
  height: Sized | null;
}

/**
 * The design with a candidate's vents, throat and stack: one row of vents, all open, where its first intake stands,
 * every stack alike.
 */
export function candidateDesign(design: Design, { vents, throat, stack, height }: Candidate): Design {
  return withAir(design, {
    vents: vents ? { kind: vents.kind, count: vents.count, area: vents.area, open: 1 } : 1,
    throat: throat?.value,
    stack: { ...stack.section, ...(height ? { height: height.value } : {}) },
  });
}

/** Of an air way, what differs from the drawing, all in SI; vents as drawn are told by how far they are open. */
interface AirWay {
  vents: { kind?: 'disc' | 'slide'; count: number; area: number; open: number } | number;
  throat?: number;
  stack?: Partial<Stack>;
}

/** The design with other vents, throat and stacks. */
export function withAir(design: Design, { vents, throat, stack = {} }: AirWay): Design {
  const opened =
    typeof vents === 'number'
      ? withOpening(design, vents)
      : {
          ...design,
          firebox: { ...design.firebox, intakes: [{ ...design.firebox.intakes[0], ...vents }] },
        };
  // a tube brings its own shape
  const bare =
    stack.wall === undefined ? {} : { shape: undefined, diameter: undefined, width: undefined, depth: undefined };
  return {
    ...opened,
    ...(throat === undefined ? {} : { throat: { ...design.throat, area: throat } }),
    stacks: design.stacks.map((each) => ({ ...each, ...bare, ...stack })),
  };
}

/** The fields of a design file that make the candidate, as they are written; the rest of the file stays as it is. */
export interface CandidateFields {
  firebox: { intakes: Tree[] };
  throat: Tree;
  stacks: Tree[];
}

/** What a candidate sets of an intake, and of a stack; the rest stays as written. */
const OF_VENTS = ['kind', 'count', 'open', 'diameter', 'width', 'height', 'area'];
const OF_TUBE = ['shape', 'diameter', 'width', 'depth', 'wall'];

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
  const share = `${Math.round(100 * open)} %`;
  return {
    firebox: {
      intakes: vents
        ? [
            {
              kind: vents.kind,
              count: vents.count,
              ...ventSize(vents),
              open: share,
              ...without(file.firebox.intakes[0], OF_VENTS),
            },
          ]
        : file.firebox.intakes.map((each) => ({ ...each, open: share })),
    },
    throat: throat ? { ...file.throat, area: throat.text } : file.throat,
    stacks: file.stacks.map((each) => ({
      ...(Object.keys(stack.written).length > 0 ? without(each, OF_TUBE) : each),
      ...stack.written,
      ...(height ? { height: height.text } : {}),
    })),
  };
}

function ventSize({ diameter, width, height }: StockVents): Tree {
  return diameter ? { diameter: diameter.text } : { width: width!.text, height: height!.text };
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
