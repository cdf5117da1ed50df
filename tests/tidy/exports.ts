import { posix } from 'node:path';
import { lineAt, type Parsed, type SyntaxNode, walk } from './syntax.ts';

/** A value that a file shows to others: what is gone when the program runs is not counted. */
interface Shown {
  readonly name: string;
  readonly line: number;
}

/** Values that are shown to others and that no other file takes. */
export function unusedExports(files: readonly Parsed[]): readonly string[] {
  const taken = new Set(files.flatMap(takenBy));
  return files.flatMap((file) =>
    shownBy(file)
      .filter(({ name }) => !taken.has(`${file.path} ${name}`) && !taken.has(`${file.path} *`))
      .map(({ name, line }) => `${file.path}:${line} exports ${name}, which no other file imports`),
  );
}

function shownBy({ program, text }: Parsed): readonly Shown[] {
  return program.body.flatMap((node) => {
    if (node.type !== 'ExportNamedDeclaration' || node.source || node.exportKind === 'type') return [];
    const line = lineAt(text, node.start);
    return [...declared(node.declaration), ...node.specifiers.map(({ exported }) => nameOf(exported))].map(
      (name) => ({ name, line }),
    );
  });
}

function declared(node: SyntaxNode | null): readonly string[] {
  if (node?.type === 'FunctionDeclaration' || node?.type === 'ClassDeclaration')
    return node.id === null ? [] : [node.id.name];
  if (node?.type !== 'VariableDeclaration') return [];
  return node.declarations.flatMap(({ id }) => (id.type === 'Identifier' ? [id.name] : []));
}

/** `path name` of what a file takes from others; `path *` where it takes the whole. */
function takenBy(file: Parsed): readonly string[] {
  const found: string[] = [];
  const take = (module: string, names: readonly string[]) => {
    const path = posix.join(posix.dirname(file.path), module);
    found.push(...names.map((name) => `${path} ${name}`));
  };
  walk(file.program, (node) => {
    if (node.type === 'ImportDeclaration')
      take(
        node.source.value,
        node.specifiers.map((one) => (one.type === 'ImportSpecifier' ? nameOf(one.imported) : '*')),
      );
    if (node.type === 'ExportAllDeclaration') take(node.source.value, ['*']);
    if (node.type === 'ExportNamedDeclaration' && node.source)
      take(
        node.source.value,
        node.specifiers.map(({ local }) => nameOf(local)),
      );
    if (node.type === 'ImportExpression' && node.source.type === 'Literal')
      take(String(node.source.value), ['*']);
    if (node.type === 'TSImportType') take(node.source.value, ['*']);
  });
  return found;
}

function nameOf(node: { readonly name: string } | { readonly value: unknown }): string {
  return 'name' in node ? node.name : String(node.value);
}
