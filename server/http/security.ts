/** What every request must pass before anything is looked up, and what every answer carries. */
import { Refusal } from '../../safety/refusal.ts';

/**
 * Only what this server itself serves is loaded, run, framed or posted to. `same-origin` as referrer policy and not
 * `no-referrer`: with that one, browsers send `Origin: null` with a plain form, and over plain http to a name on the
 * site's network, where they leave out `Sec-Fetch-Site` too, our own forms could not be told from another site's.
 */
export const SECURITY_HEADERS: Readonly<Record<string, string>> = {
  'content-security-policy': [
    "default-src 'none'",
    "script-src 'self'",
    "style-src 'self'",
    "img-src 'self'",
    "font-src 'self'",
    "connect-src 'self'",
    "form-action 'self'",
    "base-uri 'none'",
    "object-src 'none'",
    "frame-ancestors 'none'",
  ].join('; '),
  'x-content-type-options': 'nosniff',
  'referrer-policy': 'same-origin',
  'cross-origin-opener-policy': 'same-origin',
  'cross-origin-resource-policy': 'same-origin',
};

/** The server's own addresses by the host that a request names: with and without a scheme's own port. */
export function ownHosts(origins: readonly string[]): ReadonlyMap<string, string> {
  const hosts = new Map<string, string>();
  for (const own of origins) {
    const { origin, host, hostname, port, protocol } = new URL(own);
    hosts.set(host, origin);
    hosts.set(`${hostname}:${port || (protocol === 'https:' ? 443 : 80)}`, origin);
  }
  return hosts;
}

/**
 * Which of the server's own addresses the request names, or why it is not let in. Another site's name that was
 * pointed at this machine is not on the list, and so gets nothing.
 *
 * @param hosts from `ownHosts`
 */
export function ownOrigin(
  headers: Headers,
  hosts: ReadonlyMap<string, string>,
): { readonly origin: string } | { readonly status: 400 | 421; readonly text: string } {
  const host = headers.get('host');
  if (host === null || host === '') return { status: 400, text: 'The request names no host.\n' };
  const origin = hosts.get(host.toLowerCase());
  if (origin !== undefined) return { origin };
  return {
    status: 421,
    text: 'This server is not known by that name. Use the address that it printed when it started.\n',
  };
}

/**
 * A post must come from a page of this server. Browsers say so in `Sec-Fetch-Site`, or else in `Origin`;
 * a program that is no browser sends an `Origin` of its own.
 *
 * @throws Refusal REQ-004
 */
export function requireOwnPage(headers: Headers, origin: string): void {
  const site = headers.get('sec-fetch-site');
  const from = headers.get('origin');
  const own = site === null ? from === origin : site === 'same-origin' && (from === null || from === origin);
  if (own) return;
  throw new Refusal({
    kind: 'not-allowed',
    code: 'REQ-004',
    what: 'The form does not come from a page of this server.',
    kept: 'Nothing was recorded.',
    next: `Open ${origin} and enter it there. A program sends the header "Origin: ${origin}".`,
  });
}
