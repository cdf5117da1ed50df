/** What kind of answer a request wants. */
export type Wants = 'json' | 'piece' | 'page';

/** `bodyFormat`: a program that sends JSON and names no other wish wants JSON back. */
export function wants(headers: Headers, bodyFormat: 'form' | 'json' | 'none' = 'none'): Wants {
  const accept = headers.get('accept') ?? '';
  const json = weight(accept, 'application/json');
  const html = weight(accept, 'text/html');
  if (json > 0 && json >= html) return 'json';
  const sendsJson =
    bodyFormat === 'json' || (headers.get('content-type') ?? '').startsWith('application/json');
  if (html === 0 && sendsJson) return 'json';
  return headers.get('hx-request') === 'true' ? 'piece' : 'page';
}

/**
 * A program that wants to know what came of its act and nothing more (RFC 7240, 4.2). Browsers never send it.
 *
 * @example prefersMinimal(new Headers({ prefer: 'respond-async, return=minimal' })) // true
 */
export function prefersMinimal(headers: Headers): boolean {
  return (headers.get('prefer') ?? '').split(',').some((part) => MINIMAL.test(part));
}

const MINIMAL = /^\s*return\s*=\s*(?:minimal|"minimal")\s*(?:;|$)/i;

/** How much a type is wanted, 0 to 1; only where it is named, since everybody sends the wildcard. */
function weight(accept: string, type: string): number {
  for (const part of accept.split(',')) {
    const [name, ...parameters] = part.split(';').map((piece) => piece.trim().toLowerCase());
    if (name !== type) continue;
    const q = parameters.find((parameter) => parameter.startsWith('q='));
    return q === undefined ? 1 : Number(q.slice(2)) || 0;
  }
  return 0;
}
