import { lineAt, type Parsed, type SyntaxNode, walk } from './syntax.ts';
import type { TextFile } from './tree.ts';

/** Something that has a length, by a name that stays when lines above it change. */
export interface Sized {
  readonly name: string;
  readonly lines: number;
}

export const LINES_MAX = { file: 400, function: 70, template: 120 } as const;

export function fileSizes(files: readonly TextFile[]): readonly Sized[] {
  return files.map(({ path, text }) => ({ name: path, lines: text.trimEnd().split('\n').length }));
}

/** Every function of a file. A chapter of tests, as `describe` is given or as a suite gives to several, is none. */
export function functionSizes(file: Parsed): readonly Sized[] {
  const found: Sized[] = [];
  walk(file.program, (node, above) => {
    if (!isFunction(node) || isGiven(above.at(-1), CHAPTERS)) return;
    if (holdsTests(file, node) || isTable(file, node)) return;
    const lines = lineAt(file.text, node.end - 1) - lineAt(file.text, node.start) + 1;
    found.push({ name: `${file.path}#${nameOf(node, above.at(-1))}`, lines });
  });
  return found;
}

/**
 * What is longer than allowed. The list of exceptions is a ratchet: it holds the length of today, a longer one
 * fails, and a shorter one fails too until the smaller number is written down.
 */
export function tooLong(of: {
  readonly sized: readonly Sized[];
  readonly linesMax: number;
  readonly exceptions: Readonly<Record<string, number>>;
}): readonly string[] {
  const found = of.sized.flatMap(({ name, lines }) => {
    const excepted = of.exceptions[name];
    if (excepted === undefined)
      return lines > of.linesMax ? [`${name}: ${lines} lines; at most ${of.linesMax}`] : [];
    if (lines > excepted)
      return [`${name}: ${lines} lines; it was excepted with ${excepted} and may only shrink`];
    if (lines <= of.linesMax) return [`${name}: ${lines} lines; no exception any more, take it off the list`];
    return lines < excepted ? [`${name}: ${lines} lines; write that in place of ${excepted}`] : [];
  });
  const names = new Set(of.sized.map(({ name }) => name));
  const gone = Object.keys(of.exceptions).filter((name) => !names.has(name));
  return [...found, ...gone.map((name) => `${name}: excepted, but not there`)];
}

function isFunction(node: SyntaxNode): boolean {
  return (
    node.type === 'FunctionDeclaration' ||
    node.type === 'FunctionExpression' ||
    node.type === 'ArrowFunctionExpression'
  );
}

const CHAPTERS = ['describe'];
const IN_CHAPTERS = ['describe', 'test', 'it'];

/** A suite: a function of a test file whose own lines are tests. */
function holdsTests(file: Parsed, node: SyntaxNode): boolean {
  if (!file.path.startsWith('tests/') || !('body' in node) || node.body === null) return false;
  if (Array.isArray(node.body) || node.body.type !== 'BlockStatement') return false;
  return node.body.body.some(
    (line) => line.type === 'ExpressionStatement' && isGiven(line.expression, IN_CHAPTERS),
  );
}

/** A phase of a procedure: a function that does nothing but hand out a literal. It is data, and as long as its steps. */
function isTable(file: Parsed, node: SyntaxNode): boolean {
  if (!file.path.startsWith('procedures/') || !('body' in node) || node.body === null) return false;
  if (Array.isArray(node.body) || node.body.type !== 'BlockStatement') return false;
  const last = node.body.body.at(-1);
  const named = node.body.body
    .slice(0, -1)
    .every(
      (line) =>
        line.type === 'VariableDeclaration' &&
        line.declarations.every(({ init }) => init?.type === 'Literal'),
    );
  if (last?.type !== 'ReturnStatement' || !named) return false;
  let literal = last.argument;
  while (literal?.type === 'TSAsExpression' || literal?.type === 'TSSatisfiesExpression')
    literal = literal.expression;
  if (literal?.type !== 'ObjectExpression' && literal?.type !== 'ArrayExpression') return false;
  let functions = 0;
  walk(literal, (inner) => {
    if (isFunction(inner)) functions += 1;
  });
  return functions === 0;
}

/** Is this a call of one of these: `describe(...)`, or with whatever it is chained to, as `describe.each(...)(...)`? */
function isGiven(call: SyntaxNode | undefined, names: readonly string[]): boolean {
  let callee = call?.type === 'CallExpression' ? call.callee : undefined;
  while (callee?.type === 'CallExpression' || callee?.type === 'MemberExpression') {
    callee = callee.type === 'CallExpression' ? callee.callee : callee.object;
  }
  return callee?.type === 'Identifier' && names.includes(callee.name);
}

function nameOf(node: SyntaxNode, parent: SyntaxNode | undefined): string {
  if ('id' in node && node.id?.type === 'Identifier') return node.id.name;
  if (parent?.type === 'VariableDeclarator' && parent.id.type === 'Identifier') return parent.id.name;
  const key = parent !== undefined && 'key' in parent ? parent.key : undefined;
  if (key?.type === 'Identifier' || key?.type === 'PrivateIdentifier') return key.name;
  if (parent?.type === 'CallExpression' && parent.arguments[0]?.type === 'Literal') {
    return String(parent.arguments[0].value);
  }
  return 'function';
}
