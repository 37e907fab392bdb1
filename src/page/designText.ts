import { Document, isAlias, isMap, isSeq, parse, parseDocument, visit } from 'yaml';

export type FieldPath = readonly (string | number)[];

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
  get(path: FieldPath): string | undefined {
    const value: unknown = this.doc.getIn(path);
    return typeof value === 'string' || typeof value === 'number' ? String(value) : undefined;
  }

  has(path: FieldPath): boolean {
    const node: unknown = this.doc.getIn(path, true);
    return node !== undefined && (isMap(node) || isSeq(node) || isAlias(node) || this.get(path) !== undefined);
  }

  set(path: FieldPath, value: string | number): void {
    this.doc.setIn(path, value);
  }

  /** Sets a block or a list. */
  setTree(path: FieldPath, value: unknown): void {
    this.doc.setIn(path, this.doc.createNode(value));
  }

  remove(path: FieldPath): void {
    if (this.has(path)) this.doc.deleteIn(path);
  }

  /** Brings the file to what another text holds; what both have stays as it is written, comments and all. */
  follow(other: string): void {
    this.change([], this.doc.toJS({ maxAliasCount: 50 }), parse(other, { schema: 'core' }));
  }

  private change(path: FieldPath, from: unknown, to: unknown): void {
    if (JSON.stringify(from) === JSON.stringify(to)) return;
    if (to === undefined) this.doc.deleteIn(path);
    else if (Array.isArray(from) && Array.isArray(to) && from.length === to.length) {
      from.forEach((item, i) => this.change([...path, i], item, to[i]));
    } else if (isBlock(from) && isBlock(to)) {
      for (const key of new Set([...Object.keys(from), ...Object.keys(to)])) {
        this.change([...path, key], from[key], to[key]);
      }
    } else this.doc.setIn(path, this.doc.createNode(to));
  }

  /** YAML that the command reads. */
  text(): string {
    return this.doc.toString({ lineWidth: 0 });
  }
}

function isBlock(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
