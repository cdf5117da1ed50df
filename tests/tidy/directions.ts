import type { Import } from './imports.ts';

interface Layer {
  /** The longest folder that a path starts with decides. */
  readonly folder: string;
  /** Folders of ours that it may import from, itself included. */
  readonly ours: readonly string[];
  /** Packages, by name; `node:` stands for all that Node itself brings. `*` for anything. */
  readonly packages: readonly string[];
}

/** Who may know whom. Clock, disk and network begin at `node:`, which nobody below the server has. */
const LAYERS: readonly Layer[] = [
  { folder: 'safety/', ours: ['safety/'], packages: [] },
  { folder: 'procedures/calculations/', ours: ['procedures/calculations/'], packages: [] },
  { folder: 'procedures/', ours: ['procedures/', 'safety/'], packages: ['xstate', 'zod', 'csv-parse'] },
  { folder: 'views/', ours: ['views/'], packages: ['nunjucks', 'd3-scale', 'd3-shape'] },
  { folder: 'server/', ours: ['server/', 'views/', 'procedures/', 'safety/'], packages: ['*'] },
  { folder: 'tests/', ours: ['tests/', 'server/', 'views/', 'procedures/', 'safety/'], packages: ['*'] },
];

/** Imports that run against the layers. Imports of types count: what one layer must not know, it must not name. */
export function wrongDirections(imports: readonly Import[]): readonly string[] {
  return imports.flatMap((each) => {
    const layer = layerOf(each.from);
    if (layer === undefined) return [`${each.from} stands in no layer`];
    if (each.ours ? layer.ours.some((folder) => each.to.startsWith(folder)) : mayUse(layer, each.to))
      return [];
    return [`${each.from}:${each.line} imports ${each.to}, which ${layer.folder} may not know`];
  });
}

/** Imports of ours that lead to no file. */
export function lostImports(imports: readonly Import[], paths: ReadonlySet<string>): readonly string[] {
  return imports
    .filter((each) => each.ours && !paths.has(each.to))
    .map((each) => `${each.from}:${each.line} imports ${each.to}, which is not there`);
}

/**
 * Files that import each other in a circle when the program runs. `import type` is gone by then and does not
 * count; `import { type X }` does, because it still loads the file.
 */
export function circles(imports: readonly Import[]): readonly string[] {
  const next = new Map<string, string[]>();
  for (const { from, to, ours, erased } of imports) {
    if (ours && !erased) next.set(from, [...(next.get(from) ?? []), to]);
  }
  const done = new Set<string>();
  const found: string[] = [];
  for (const start of next.keys()) follow(start, []);
  return found;

  function follow(file: string, path: readonly string[]): void {
    const at = path.indexOf(file);
    if (at >= 0) found.push([...path.slice(at), file].join(' -> '));
    if (at >= 0 || done.has(file)) return;
    for (const other of next.get(file) ?? []) follow(other, [...path, file]);
    done.add(file);
  }
}

function layerOf(path: string): Layer | undefined {
  return LAYERS.filter(({ folder }) => path.startsWith(folder)).reduce<Layer | undefined>(
    (longest, layer) => (longest && longest.folder.length > layer.folder.length ? longest : layer),
    undefined,
  );
}

function mayUse(layer: Layer, name: string): boolean {
  return layer.packages.some(
    (allowed) => allowed === '*' || name === allowed || name.startsWith(`${allowed}/`),
  );
}
