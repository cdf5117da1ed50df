export type OurCookie = 'yokeside-session' | 'yokeside-screen';

/** The cookies of one request, and whether it came over TLS. */
export interface Cookies {
  readonly all: Readonly<Record<string, string>>;
  readonly secure: boolean;
}

/** With the prefix a browser takes a cookie over TLS alone, so it is there only then. */
function fullName(name: OurCookie, secure: boolean): string {
  return secure ? `__Host-${name}` : name;
}

export interface NewCookie {
  readonly name: OurCookie;
  readonly value: string;
  readonly secure: boolean;
  /** 0 ends it at once; without it, it ends with the browser. */
  readonly maxAgeS?: number;
}

/** The value of a Set-Cookie header: for this host alone, unseen by scripts and by other sites. */
export function setCookie({ name, value, secure, maxAgeS }: NewCookie): string {
  const age = maxAgeS === undefined ? '' : `; Max-Age=${maxAgeS}`;
  return `${fullName(name, secure)}=${value}; Path=/; HttpOnly; SameSite=Strict${secure ? '; Secure' : ''}${age}`;
}

/** The cookies of a Cookie header. Of two with one name the first counts. */
export function readCookies(header: string | null): Readonly<Record<string, string>> {
  const cookies: Record<string, string> = Object.create(null);
  for (const part of (header ?? '').split(';')) {
    const equals = part.indexOf('=');
    if (equals > 0) cookies[part.slice(0, equals).trim()] ??= part.slice(equals + 1).trim();
  }
  return cookies;
}

export function ourCookie(cookies: Cookies, name: OurCookie): string | undefined {
  return cookies.all[fullName(name, cookies.secure)];
}
