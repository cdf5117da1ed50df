import { lineAt, type Parsed, type SyntaxNode, walk } from './syntax.ts';

/** Functions of the language's surroundings that reach clock, network or screen. */
const REACHING = new Set([
  'fetch',
  'setTimeout',
  'setInterval',
  'setImmediate',
  'queueMicrotask',
  'require',
  'eval',
  'Function',
]);

/** Objects of the surroundings, each with what of it reaches out. `process` is also a word of the trade. */
const OBJECTS: Readonly<Record<string, RegExp>> = {
  Date: /^now$/,
  Math: /^random$/,
  process:
    /^(env|exit|argv|cwd|stdin|stdout|stderr|hrtime|nextTick|on|once|platform|memoryUsage|uptime|kill)$/,
  performance: /./,
  crypto: /./,
  console: /./,
  globalThis: /./,
};

/** Uses of clock, chance, network, console and process. Only the server may have them. */
export function reachesOut(file: Parsed): readonly string[] {
  const found: string[] = [];
  walk(file.program, (node) => {
    const what = reaching(node);
    if (what !== undefined) found.push(`${file.path}:${lineAt(file.text, node.start)} uses ${what}`);
  });
  return found;
}

function reaching(node: SyntaxNode): string | undefined {
  if (node.type === 'MemberExpression') {
    const { object, property } = node;
    if (object.type !== 'Identifier' || property.type !== 'Identifier' || node.computed) return undefined;
    return OBJECTS[object.name]?.test(property.name) ? `${object.name}.${property.name}` : undefined;
  }
  if (node.type !== 'CallExpression' && node.type !== 'NewExpression') return undefined;
  if (node.callee.type !== 'Identifier') return undefined;
  const { name } = node.callee;
  if (name === 'Date' && (node.type === 'CallExpression' || node.arguments.length === 0))
    return 'the time now';
  return REACHING.has(name) ? name : undefined;
}
