import { dirname, join, relative, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';

const ROOT = resolve(dirname(fileURLToPath(import.meta.url)), '../../src');

/**
 * A declaration at the top of a file, as `physics/air.ts#airViscosity`; or an entry of such an object,
 * `...#checks.name`.
 */
export type Place = string;

/**
 * Which declarations of src a declaration uses, by name and across files: an edge for every value that its text refers
 * to. Types do not count; a class counts as a whole. Names alone are followed, so that no types need be worked out.
 */
export class CodeGraph {
  private readonly uses = new Map<Place, Set<Place>>();
  private readonly checker: ts.TypeChecker;

  /** @param files of src that are read, with all that they import */
  constructor(files: readonly string[]) {
    const options = {
      module: ts.ModuleKind.NodeNext,
      moduleResolution: ts.ModuleResolutionKind.NodeNext,
      target: ts.ScriptTarget.ES2022,
      noLib: true,
      types: [],
    };
    const host = ts.createCompilerHost(options);
    // what a package declares is no place of ours
    host.resolveModuleNameLiterals = (names, from) =>
      names.map(({ text }) =>
        text.startsWith('.') ? ts.resolveModuleName(text, from, options, host) : { resolvedModule: undefined },
      );
    const program = ts.createProgram({ rootNames: files.map((file) => join(ROOT, file)), options, host });
    this.checker = program.getTypeChecker();
    for (const file of program.getSourceFiles()) {
      if (!file.fileName.startsWith(ROOT)) continue;
      for (const statement of file.statements) this.addStatement(statement);
    }
  }

  get places(): Place[] {
    return [...this.uses.keys()];
  }

  has(place: Place): boolean {
    return this.uses.has(place);
  }

  /**
   * All that is used from these places on, themselves included; what lies behind a place that `goOn` refuses is left
   * out.
   */
  reachedFrom(places: readonly Place[], goOn: (place: Place) => boolean = () => true): Set<Place> {
    const found = new Set<Place>(places);
    const open = [...places];
    for (let place = open.pop(); place !== undefined; place = open.pop()) {
      const uses = this.uses.get(place);
      if (!uses) throw new RangeError(`there is no ${place}`);
      if (!places.includes(place) && !goOn(place)) continue;
      for (const next of uses) {
        if (found.has(next)) continue;
        found.add(next);
        open.push(next);
      }
    }
    return found;
  }

  private addStatement(statement: ts.Statement): void {
    if (ts.isFunctionDeclaration(statement) || ts.isClassDeclaration(statement)) this.add(statement, statement);
    if (!ts.isVariableStatement(statement)) return;
    for (const declaration of statement.declarationList.declarations) {
      const place = this.add(declaration, declaration);
      const { initializer } = declaration;
      if (!place || !initializer || !ts.isObjectLiteralExpression(initializer)) continue;
      for (const property of initializer.properties) {
        if (ts.isPropertyAssignment(property))
          this.uses.set(`${place}.${property.name.getText()}`, this.usedIn(property));
      }
    }
  }

  private add(declaration: ts.Declaration, within: ts.Node): Place | undefined {
    const place = placeOf(declaration);
    if (place) this.uses.set(place, this.usedIn(within));
    return place;
  }

  private usedIn(node: ts.Node): Set<Place> {
    const used = new Set<Place>();
    const visit = (child: ts.Node): void => {
      if (ts.isTypeNode(child) && !ts.isExpressionWithTypeArguments(child)) return;
      if (ts.isPropertyAccessExpression(child)) return visit(child.expression);
      if (ts.isIdentifier(child)) {
        const place = this.target(child);
        if (place) used.add(place);
      }
      ts.forEachChild(child, visit);
    };
    visit(node);
    return used;
  }

  private target(name: ts.Identifier): Place | undefined {
    const { parent } = name;
    let symbol = ts.isShorthandPropertyAssignment(parent)
      ? this.checker.getShorthandAssignmentValueSymbol(parent)
      : this.checker.getSymbolAtLocation(name);
    if (symbol && symbol.flags & ts.SymbolFlags.Alias) symbol = this.checker.getAliasedSymbol(symbol);
    return symbol?.valueDeclaration && placeOf(symbol.valueDeclaration);
  }
}

/** Place of a declaration that stands at the top of a file of src. */
function placeOf(declaration: ts.Declaration): Place | undefined {
  const file = declaration.getSourceFile();
  if (!file.fileName.startsWith(ROOT)) return undefined;
  const { parent } = declaration;
  const top = ts.isVariableDeclaration(declaration) ? parent.parent.parent === file : parent === file;
  const name = ts.getNameOfDeclaration(declaration);
  return top && name ? `${relative(ROOT, file.fileName)}#${name.getText()}` : undefined;
}
