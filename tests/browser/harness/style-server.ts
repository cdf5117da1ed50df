import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { SECURITY_HEADERS } from '../../../server/http/security.ts';
import { ASSET_FILES } from '../../../views/assets.ts';
import { createRenderer } from '../../../views/render.ts';
import { screenChoice } from '../../../views/screen-choice.ts';
import { styleView } from '../../../views/style-page.ts';
import { ROOT } from '../../root.ts';
import { type Listening, listen } from './listen.ts';

const VIEWS = join(ROOT, 'views');

/** The page that shows every part in every state, with the headers of the real server and without any of its data. */
export function startStyleServer(): Promise<Listening> {
  const renderer = createRenderer({ folder: VIEWS });
  const page = renderer.render('pages/style.njk', styleView({ renderer, screen: screenChoice(undefined) }));
  return listen(() => (request) => {
    const { pathname } = new URL(request.url);
    if (pathname === '/') return answer(page, 'text/html; charset=utf-8');
    const asset = ASSET_FILES[pathname.replace('/assets/', '')];
    return asset === undefined ? new Response(null, { status: 404 }) : answer(bytesOf(asset), asset.type);
  });
}

function answer(body: string | Uint8Array<ArrayBuffer>, type: string): Response {
  return new Response(body, { headers: { ...SECURITY_HEADERS, 'content-type': type } });
}

function bytesOf(asset: (typeof ASSET_FILES)[string]): Uint8Array<ArrayBuffer> {
  const files =
    'module' in asset
      ? [createRequire(import.meta.url).resolve(asset.module)]
      : asset.parts.map((part) => join(VIEWS, part));
  return new Uint8Array(Buffer.concat(files.map((file) => readFileSync(file))));
}
