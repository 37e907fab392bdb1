import { Document, isAlias, isMap, isSeq, parse, parseDocument, visit } from 'yaml';
import type { Path } from '../design/path.js';
import { blockOf, type Tree } from '../design/vary.js';

/**
 * A design file under the page's hands: fields are set one by one, and everything the page has no control for, comments
 * included, stays as it was.
 */
export class DesignText {
  private constructor(private readonly doc: Document) {}

  /** @param text a design that `readDesign` accepts */
  static from(text: string): DesignText {
    const doc = parseDocument(text.replace(/^\uFEFF/, ''), { schema: 'core', uniqueKeys: false, logLevel: 'error' });
    let shared = false;
    visit(doc, { Alias: () => void (shared = true) });
    // an edit of one field must not reach another through an alias
    return new DesignText(shared ? new Document(doc.toJS({ maxAliasCount: 50 }), { schema: 'core' }) : doc);
  }

  copy(): DesignText {
    return new DesignText(this.doc.clone());
  }

  /** The field as written, undefined where the file has none. */
  get(path: Path): string | undefined {
    const node: unknown = this.doc.getIn(path);
    const items: unknown = isSeq(node) ? node.toJSON() : null;
    // a list of plain words or numbers
    const value = Array.isArray(items) && items.every((item) => typeof item !== 'object') ? items.join(', ') : node;
    return typeof value === 'string' || typeof value === 'number' ? String(value) : undefined;
  }

  has(path: Path): boolean {
    const node: unknown = this.doc.getIn(path, true);
    return node !== undefined && (isMap(node) || isSeq(node) || isAlias(node) || this.get(path) !== undefined);
  }

  set(path: Path, value: string | number): void {
    this.doc.setIn(path, value);
  }

  /** Sets a block or a list. */
  setTree(path: Path, value: unknown): void {
    this.doc.setIn(path, this.doc.createNode(value));
  }

  remove(path: Path): void {
    if (this.has(path)) this.doc.deleteIn(path);
  }

  /** Brings the file to what another text holds; what both have stays as it is written, comments and all. */
  follow(other: string): void {
    this.change([], this.tree(), parse(other, { schema: 'core' }));
  }

  private change(path: Path, from: unknown, to: unknown): void {
    if (JSON.stringify(from) === JSON.stringify(to)) return;
    if (to === undefined) this.doc.deleteIn(path);
    else if (Array.isArray(from) && Array.isArray(to) && from.length === to.length) {
      from.forEach((item, i) => this.change([...path, i], item, to[i]));
    } else {
      const [before, after] = [blockOf(from), blockOf(to)];
      if (!before || !after) return this.setTree(path, to);
      for (const key of new Set([...Object.keys(before), ...Object.keys(after)])) {
        this.change([...path, key], before[key], after[key]);
      }
    }
  }

  /** What it holds. */
  tree(): Tree {
    return this.doc.toJS({ maxAliasCount: 50 }) as Tree;
  }

  /** YAML that the command reads. */
  text(): string {
    return this.doc.toString({ lineWidth: 0 });
  }
}
