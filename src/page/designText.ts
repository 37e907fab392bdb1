import { Document, isAlias, isMap, isSeq, parseDocument, visit } from 'yaml';

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

  remove(path: FieldPath): void {
    if (this.has(path)) this.doc.deleteIn(path);
  }

  /** YAML that the command reads. */
  text(): string {
    return this.doc.toString({ lineWidth: 0 });
  }
}
