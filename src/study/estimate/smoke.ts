/** Smoke that leaves by door gaps, against what leaves by the stack. */
import type { OpeningState } from './result.js';

/** What goes out of all stacks, and of the gaps of each part's doors [kg/s]. */
export function smokeOf(openings: readonly OpeningState[]): { stack: number; byPart: Map<string, number> } {
  const byPart = new Map<string, number>();
  let stack = 0;
  for (const { role, part, flow_kg_per_s: flow } of openings) {
    if (flow <= 0) continue;
    if (role === 'stackExit') stack += flow;
    if (part) byPart.set(part, (byPart.get(part) ?? 0) + flow);
  }
  return { stack, byPart };
}

/** Smoke over what leaves by the stack; where nothing does, all of it [-]. */
export function smokeShare(smoke: number, stack: number): number {
  return stack > 0 ? smoke / stack : Number(smoke > 0);
}
