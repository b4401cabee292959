/** What a source file imports, read by the TypeScript parser. */
import { posix } from 'node:path';
import ts from 'typescript';
import { textOf } from './files.js';

export interface Import {
  /** As written. */
  readonly specifier: string;
  /** Path from the root for relative imports (`.js` turned into `.ts`); else undefined. */
  readonly path: string | undefined;
  readonly line: number;
}

/** Static, re-exporting, dynamic and type imports, and workers by `new URL(..., import.meta.url)`. */
export function importsOf(file: string): Import[] {
  const source = ts.createSourceFile(file, textOf(file), ts.ScriptTarget.Latest, true);
  const found: Import[] = [];

  const add = (node: ts.Node | undefined): void => {
    if (!node || !ts.isStringLiteralLike(node)) return;
    const specifier = node.text;
    const bare = specifier.replace(/\?.*$/, '').replace(/\.js$/, '.ts');
    found.push({
      specifier,
      path: bare.startsWith('.') ? posix.join(posix.dirname(file), bare) : undefined,
      line: source.getLineAndCharacterOfPosition(node.getStart()).line + 1,
    });
  };

  const visit = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node) || ts.isExportDeclaration(node)) add(node.moduleSpecifier);
    else if (ts.isImportTypeNode(node) && ts.isLiteralTypeNode(node.argument))
      add(node.argument.literal);
    else if (ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword)
      add(node.arguments[0]);
    else if (ts.isNewExpression(node) && isUrlOfThisModule(node)) add(node.arguments?.[0]);
    ts.forEachChild(node, visit);
  };
  visit(source);
  return found;
}

function isUrlOfThisModule(node: ts.NewExpression): boolean {
  const [target, base] = node.arguments ?? [];
  return (
    ts.isIdentifier(node.expression) &&
    node.expression.text === 'URL' &&
    base?.getText() === 'import.meta.url' &&
    // Other files so named are read, not run.
    ts.isStringLiteralLike(target) &&
    /\.[jt]s$/.test(target.text)
  );
}
