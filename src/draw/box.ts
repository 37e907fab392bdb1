/** What a text or a mark covers of a picture [px]. */
export interface Box {
  left: number;
  right: number;
  top: number;
  bottom: number;
}

/** Does one cover part of the other? */
export function meet(a: Box, b: Box): boolean {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}
