import { stringify } from 'yaml';
import type { Tree } from '../design/randomDesign.js';
import type { Failure } from './checks.js';
import { MISSES } from './misses.js';

/** Designs that are printed in full, of those that fail together. */
const MOST_PRINTED = 3;

/** What fails, with its seed, and the designs as files that the command runs. */
export class Findings {
  private readonly lines: string[] = [];
  private readonly designs = new Map<number, Tree>();

  add(seed: number, tree: Tree, failures: readonly Failure[]): void {
    const known = MISSES[seed]?.kinds ?? [];
    for (const kind of known) {
      if (!failures.some((failure) => failure.kind === kind))
        this.lines.push(`seed ${seed}: no longer misses (${kind})`);
    }
    failures = failures.filter(({ kind }) => !known.includes(kind));
    for (const { kind, detail } of failures) this.lines.push(`seed ${seed} (${String(tree.name)}): ${kind}: ${detail}`);
    if (failures.length > 0) this.designs.set(seed, tree);
  }

  /** Throws where anything was found. */
  tell(): void {
    if (this.lines.length === 0) return;
    const files = [...this.designs]
      .slice(0, MOST_PRINTED)
      .map(([seed, tree]) => `# ---- the design of seed ${seed} ----\n${stringify(tree)}`);
    throw new Error(`${this.lines.length} findings\n${this.lines.join('\n')}\n\n${files.join('\n')}`);
  }
}
