import { lineAt, type Parsed, type SyntaxNode, walk } from './syntax.ts';

/** A number that a file shows to others, by its name. */
export interface Quantity {
  readonly name: string;
  readonly line: number;
}

/** Words that name something measured: a number so named says in which unit. */
const MEASURED =
  /^(pressure|supply|signal|travel|lift|stroke|force|friction|preload|load|area|temperature|time|wait|duration|age|torque|flow|diameter|radius|pitch|length|height|thickness|gap|rate|mass|weight|volume|density|drop|shift|span|range|limit|uncertainty|tolerance|hysteresis|band|margin|leak)s?$/;

/** Units inside, as names carry them. No MPa and no mPa: camel case cannot tell them apart. */
const UNIT_SUFFIXES = [
  ...['Pa', 'PaPerS', 'PaPerM', 'N', 'NPerM', 'NM', 'Nm', 'M', 'M2', 'M3', 'M3PerS', 'MPerS', 'Mm'],
  ...['Kg', 'KgPerS', 'KgPerM3', 'J', 'K', 'C', 'S', 'Ms', 'Minutes', 'Hours', 'Days', 'Mol', 'V', 'A', 'Hz'],
  // Numbers without a dimension, or counted.
  ...[
    'Fraction',
    'Percent',
    'Ratio',
    'Factor',
    'Coefficient',
    'Kv',
    'Cv',
    'Xt',
    'Turns',
    'Px',
    'Count',
    'Si',
    'Sigma',
  ],
] as const;

/** May follow the unit: which of several, or the edge of a range. */
const QUALIFIERS = '(Max|Min|Low|High|Up|Down|First|Last|Before|After|Each|Abs|Gauge|Of[A-Z][a-z]+)*';
const WITH_UNIT = new RegExp(`(${[...UNIT_SUFFIXES].sort(longestFirst).join('|')})${QUALIFIERS}$`);
/** Words that say that a number is counted, or compares two of a kind: no dimension. */
const COUNTED = /^(turns|percent|fraction|ratio|relative|count|number)$/;

/** Numbers whose name holds a word of measuring and no unit. */
export function withoutUnit(quantities: readonly Quantity[]): readonly Quantity[] {
  return quantities.filter(({ name }) => {
    const constant = /^[A-Z0-9_]+$/.test(name);
    const words = constant
      ? name.toLowerCase().split('_')
      : name.split(/(?=[A-Z])/).map((word) => word.toLowerCase());
    if (!words.some((word) => MEASURED.test(word)) || words.some((word) => COUNTED.test(word))) return false;
    const camel = constant
      ? words.map((word) => word.charAt(0).toUpperCase() + word.slice(1)).join('')
      : name;
    return !WITH_UNIT.test(camel);
  });
}

/**
 * Numbers without a unit that no list excuses, and lines of the list that excuse nothing any more. Where numbers of
 * any one unit are compared with each other, the unit is the caller's; the list holds the names, file by file.
 */
export function unexplained(
  found: Readonly<Record<string, readonly Quantity[]>>,
  callersUnit: Readonly<Record<string, readonly string[]>>,
): readonly string[] {
  const bare = Object.entries(found).flatMap(([path, quantities]) =>
    withoutUnit(quantities).map(({ name, line }) => ({ path, name, line })),
  );
  const idle = Object.entries(callersUnit).flatMap(([path, names]) =>
    names
      .filter((name) => !bare.some((each) => each.path === path && each.name === name))
      .map((name) => `${path} ${name}: excused, but not there`),
  );
  const open = bare
    .filter(({ path, name }) => !callersUnit[path]?.includes(name))
    .map(({ path, name, line }) => `${path}:${line} ${name} has no unit`);
  return [...open, ...idle];
}

/**
 * Numbers in what a file exports: parameters and results of functions, fields of types and classes, constants, and
 * fields of zod schemas. What a function holds inside is its own affair.
 */
export function shownQuantities(file: Parsed): readonly Quantity[] {
  const found: Quantity[] = [];
  const add = (key: SyntaxNode, node: SyntaxNode) => {
    if (key.type === 'Identifier') found.push({ name: key.name, line: lineAt(file.text, node.start) });
  };
  for (const statement of file.program.body) {
    if (statement.type !== 'ExportNamedDeclaration' || !statement.declaration) continue;
    for (const part of signatures(statement.declaration)) walk(part, (node) => collect(node, add));
  }
  return found;
}

/** The parts of a declaration that others see: not the bodies of functions. */
function signatures(node: SyntaxNode): readonly SyntaxNode[] {
  if (node.type === 'FunctionDeclaration' || node.type === 'FunctionExpression' || isArrow(node)) {
    return [...node.params, ...(node.returnType ? [node.returnType] : [])];
  }
  if (node.type === 'VariableDeclaration') return node.declarations.flatMap((each) => shownByVariable(each));
  if (node.type === 'ClassDeclaration') {
    return node.body.body.flatMap((member) =>
      member.type === 'MethodDefinition' && member.key.type !== 'PrivateIdentifier'
        ? signatures(member.value)
        : member.type === 'PropertyDefinition' && member.key.type !== 'PrivateIdentifier'
          ? [{ ...member, value: null }]
          : [],
    );
  }
  return [node];
}

function shownByVariable(
  variable: SyntaxNode & { readonly type: 'VariableDeclarator' },
): readonly SyntaxNode[] {
  const { init, id } = variable;
  if (init && isArrow(init)) return signatures(init);
  // A table whose name carries the unit has it for all its lines.
  const named = id.type === 'Identifier' && WITH_UNIT.test(unitOfConstant(id.name));
  return named && init ? [] : [variable];
}

function unitOfConstant(name: string): string {
  return name
    .toLowerCase()
    .split('_')
    .map((word) => word.charAt(0).toUpperCase() + word.slice(1))
    .join('');
}

function collect(node: SyntaxNode, add: (key: SyntaxNode, node: SyntaxNode) => void): void {
  if (node.type === 'TSPropertySignature' || node.type === 'PropertyDefinition') {
    if (node.typeAnnotation && isNumeric(node.typeAnnotation.typeAnnotation)) add(node.key, node);
  } else if (node.type === 'Identifier' && 'typeAnnotation' in node && node.typeAnnotation) {
    if (isNumeric(node.typeAnnotation.typeAnnotation)) add(node, node);
  } else if (node.type === 'VariableDeclarator' && node.init && isNumber(node.init)) add(node.id, node);
  else if (node.type === 'Property' && (isNumber(node.value) || isNumberSchema(node.value)))
    add(node.key, node);
}

function isArrow(node: SyntaxNode): node is SyntaxNode & { readonly type: 'ArrowFunctionExpression' } {
  return node.type === 'ArrowFunctionExpression';
}

function isNumeric(type: SyntaxNode): boolean {
  if (type.type === 'TSNumberKeyword') return true;
  if (type.type === 'TSUnionType') return type.types.some(isNumeric);
  if (type.type === 'TSArrayType') return isNumeric(type.elementType);
  if (type.type === 'TSTypeOperator') return isNumeric(type.typeAnnotation);
  return type.type === 'TSTupleType' && type.elementTypes.some(isNumeric);
}

function isNumber(value: SyntaxNode): boolean {
  if (value.type === 'Literal') return typeof value.value === 'number';
  if (value.type === 'UnaryExpression') return isNumber(value.argument);
  return value.type === 'BinaryExpression' && (isNumber(value.left) || isNumber(value.right));
}

/** `z.number()` or `z.int()` with anything called on it. */
function isNumberSchema(value: SyntaxNode): boolean {
  if (value.type === 'CallExpression') return isNumberSchema(value.callee);
  if (value.type !== 'MemberExpression' || value.property.type !== 'Identifier') return false;
  if (value.object.type !== 'Identifier') return isNumberSchema(value.object);
  return value.object.name === 'z' && /^(number|int|float64)$/.test(value.property.name);
}

function longestFirst(one: string, other: string): number {
  return other.length - one.length;
}
