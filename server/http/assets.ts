/** Style, fonts and scripts: read once at the start, and kept by browsers for good under an address that changes with them. */
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { z } from 'zod';
import { ASSET_FILES, type AssetSource } from '../../views/assets.ts';
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

/** @param project the folder that holds `views/` and `package.json` */
export function readAssets(project: string): Assets {
  const load = createRequire(join(project, 'package.json'));
  const files = new Map<string, Asset>();
  for (const [name, source] of Object.entries(ASSET_FILES)) {
    files.set(name, { type: source.type, bytes: bytesOf(source, { project, load }) });
  }
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
