/**
 * TypeScript read as a tree. The compiler's own JavaScript interface changed with its seventh version, so the
 * parser is the one that vitest brings with it: nothing more is installed, and it reads what the tests run.
 */
import { type ESTree, parseSync } from 'rolldown/utils';
import type { TextFile } from './tree.ts';

export type SyntaxNode = ESTree.Node;

export interface Parsed extends TextFile {
  readonly program: ESTree.Program;
}

/** @throws Error if it is no TypeScript: a file that cannot be read cannot be judged */
export function parsed({ path, text }: TextFile): Parsed {
  const { program, errors } = parseSync(path, text);
  const error = errors[0];
  if (error !== undefined) throw new Error(`${path}: ${error.message}`);
  return { path, text, program };
}

/** Calls `visit` for each node below, and with the nodes above it, the nearest last. */
export function walk(
  node: SyntaxNode,
  visit: (node: SyntaxNode, above: readonly SyntaxNode[]) => void,
): void {
  const above: SyntaxNode[] = [];
  step(node);
  function step(here: SyntaxNode): void {
    visit(here, above);
    above.push(here);
    for (const value of Object.values(here)) {
      if (typeof value !== 'object' || value === null) continue;
      for (const child of Array.isArray(value) ? value : [value]) if (isNode(child)) step(child);
    }
    above.pop();
  }
}

/** The line that a place in a text is on, from 1. */
export function lineAt(text: string, at: number): number {
  return text.slice(0, at).split('\n').length;
}

function isNode(value: unknown): value is SyntaxNode {
  return (
    typeof value === 'object' && value !== null && typeof (value as { type?: unknown }).type === 'string'
  );
}
