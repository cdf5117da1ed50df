/** Style, fonts and scripts: read once at the start, and kept by browsers for good under an address that changes with them. */
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { z } from 'zod';
import { ASSET_FILES, type AssetSource } from '../../views/assets.ts';
import { BUILT_ASSETS } from '../project-folder.ts';
import { compactFont } from './compact-font.ts';
import { notFound } from './errors.ts';
import { type Route, route } from './route.ts';

interface Asset {
  readonly type: string;
  readonly bytes: Uint8Array<ArrayBuffer>;
}

export interface Assets {
  /** The address of a file by its name in the list of `views/`, `style.css`. @throws TypeError for another name */
  address(name: string): string;
  readonly route: Route;
}

const DIGEST_DIGITS = 16;

/**
 * @param project the folder that holds `views/` and `package.json`
 * @param built the folder of a build that has them ready; null makes them of their sources
 */
export function readAssets(project: string, built: string | null = null): Assets {
  const files = built === null ? builtAssets(project) : assetsOf(join(built, BUILT_ASSETS));
  // One digest for all, so that a style sheet finds its fonts beside it.
  const all = createHash('sha256');
  for (const [name, { bytes }] of files) all.update(`${name}\n`).update(bytes);
  const digest = all.digest('hex').slice(0, DIGEST_DIGITS);
  return {
    address: (name) => {
      if (!files.has(name)) throw new TypeError(`There is no file ${name} in views/assets.ts.`);
      return `/assets/${digest}/${name}`;
    },
    route: assetRoute(files, digest),
  };
}

/** Each file as it is served, by its name, made of its sources. */
export function builtAssets(project: string): ReadonlyMap<string, Asset> {
  const load = createRequire(join(project, 'package.json'));
  return eachAsset((_, source) => bytesOf(source, { project, load }));
}

function assetsOf(folder: string): ReadonlyMap<string, Asset> {
  return eachAsset((name) => new Uint8Array(readFileSync(join(folder, name))));
}

function eachAsset(bytes: (name: string, source: AssetSource) => Asset['bytes']): ReadonlyMap<string, Asset> {
  return new Map(
    Object.entries(ASSET_FILES).map(([name, source]) => [
      name,
      { type: source.type, bytes: bytes(name, source) },
    ]),
  );
}

function assetRoute(files: ReadonlyMap<string, Asset>, digest: string): Route {
  return route({
    method: 'GET',
    path: '/assets/:digest/:name{.+}',
    name: 'getAsset',
    summary: 'Style, fonts and scripts of the pages',
    roles: 'anyone',
    background: true,
    rawType: 'application/octet-stream',
    answer: z.object({ name: z.string() }),
    handle: ({ params }) => {
      const name = params.name ?? '';
      const asset = params.digest === digest ? files.get(name) : undefined;
      if (asset === undefined) throw notFound();
      return { data: { name }, raw: { contentType: asset.type, body: asset.bytes, immutable: true } };
    },
  });
}

function bytesOf(
  source: AssetSource,
  { project, load }: { project: string; load: NodeJS.Require },
): Uint8Array<ArrayBuffer> {
  if ('module' in source) {
    const bytes = new Uint8Array(readFileSync(load.resolve(source.module)));
    return source.type === 'font/woff2' ? new Uint8Array(compactFont(bytes, source.isKerned)) : bytes;
  }
  const text = source.parts.map((part) => readFileSync(join(project, 'views', part), 'utf8')).join('');
  return new Uint8Array(Buffer.from(source.compact?.(text) ?? text));
}
