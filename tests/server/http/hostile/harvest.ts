/** What answers give away to whoever looks: forms with their numbers of one use, and names that exist. */
import type { Role } from '../../../../server/people/person.ts';

export interface FoundForm {
  readonly action: string;
  readonly method: 'GET' | 'POST';
  /** As a browser would send them untouched, blank ones too. */
  readonly fields: readonly (readonly [name: string, value: string])[];
  /** Whose page it stood on. */
  readonly role: Role | null;
  readonly from: string;
}

export interface Harvest {
  readonly forms: readonly FoundForm[];
  readonly ids: readonly string[];
}

const FORMS_MAX = 120;
const IDS_MAX = 150;
const FORM = /<form\b([^>]*)>([\s\S]*?)<\/form>/g;
const CONTROL = /<(?:input|textarea|select|button)\b([^>]*)>/g;
const LINK = /href="\/(?:practice\/)?[a-z-]+\/([^"/?#]+)/g;

const attribute = (text: string, name: string): string | undefined => {
  const found = new RegExp(`\\b${name}="([^"]*)"`).exec(text)?.[1];
  return found
    ?.replaceAll('&quot;', '"')
    .replaceAll('&#39;', "'")
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&amp;', '&');
};

/** Newest found take the place of the oldest, so that what is kept stays small and fresh. */
export class Reaped implements Harvest {
  readonly forms: FoundForm[] = [];
  readonly ids: string[];

  constructor(ids: readonly string[]) {
    this.ids = [...ids];
  }

  take(html: string, { from, role }: Pick<FoundForm, 'from' | 'role'>): void {
    for (const [, head = '', inner = ''] of html.matchAll(FORM)) {
      const action = attribute(head, 'action');
      if (action === undefined || !action.startsWith('/')) continue;
      const method = attribute(head, 'method')?.toUpperCase() === 'POST' ? 'POST' : 'GET';
      this.forms.push({ action, method, fields: controls(inner), role, from });
    }
    for (const [, id = ''] of html.matchAll(LINK)) this.#takeId(id);
    this.forms.splice(0, Math.max(0, this.forms.length - FORMS_MAX));
  }

  #takeId(encoded: string): void {
    const id = decodeURIComponent(encoded);
    if (id.length > 60 || this.ids.includes(id)) return;
    this.ids.push(id);
    this.ids.splice(0, Math.max(0, this.ids.length - IDS_MAX));
  }
}

function controls(inner: string): FoundForm['fields'] {
  const fields = new Map<string, string>();
  for (const [, head = ''] of inner.matchAll(CONTROL)) {
    const name = attribute(head, 'name');
    if (name !== undefined && name !== '') fields.set(name, attribute(head, 'value') ?? '');
  }
  return [...fields];
}
