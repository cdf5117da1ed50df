import { posix } from 'node:path';
import { lineAt, type Parsed, type SyntaxNode, walk } from './syntax.ts';

/** One import as a rule sees it. */
export interface Import {
  readonly from: string;
  readonly line: number;
  /** Path from the root for a file of ours; `node:fs` or `zod` for a module that is not. */
  readonly to: string;
  readonly ours: boolean;
  /** Gone when the program runs: `import type`. */
  readonly erased: boolean;
}

/** Everything that a file imports: statements, re-exports, `import()` of a fixed name, and types named in place. */
export function importsOf(file: Parsed): readonly Import[] {
  const found: Import[] = [];
  walk(file.program, (node) => {
    const named = namedModule(node);
    if (named === undefined) return;
    const ours = named.name.startsWith('.');
    const to = ours ? posix.join(posix.dirname(file.path), named.name) : named.name;
    found.push({ from: file.path, line: lineAt(file.text, node.start), to, ours, erased: named.erased });
  });
  return found;
}

function namedModule(node: SyntaxNode): { readonly name: string; readonly erased: boolean } | undefined {
  switch (node.type) {
    case 'ImportDeclaration':
      return { name: node.source.value, erased: node.importKind === 'type' };
    case 'ExportAllDeclaration':
      return { name: node.source.value, erased: node.exportKind === 'type' };
    case 'ExportNamedDeclaration':
      return node.source ? { name: node.source.value, erased: node.exportKind === 'type' } : undefined;
    case 'TSImportType':
      return { name: node.source.value, erased: true };
    case 'ImportExpression':
      return node.source.type === 'Literal' ? { name: String(node.source.value), erased: false } : undefined;
    default:
      return undefined;
  }
}
