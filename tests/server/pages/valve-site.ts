/** A whole server with an engineer and a technician signed in, for the tests of the pages of valves. */
import { expect } from 'vitest';
import { streamOf } from '../../../server/log/stream-kind.ts';
import { type Valve, valveKind } from '../../../server/valves/valve-stream.ts';
import { FV_214 } from '../../builders/sheets.ts';
import { attributeOf, readHtml, textOf } from '../../views/html.ts';
import { type AnApp, anApp, type Browser, newRequestId } from '../an-app.ts';

export type Texts = Readonly<Record<string, string>>;

export interface ValveSite {
  readonly app: AnApp;
  readonly engineer: Browser;
  readonly technician: Browser;
  /** A form, by the engineer unless said otherwise. */
  posted(path: string, fields: Texts, as?: Browser): Promise<Response>;
  /** The same as JSON. */
  json(path: string, fields: Texts, as?: Browser): Promise<Response>;
  /** A page that must be there and be right HTML. */
  seen(path: string, as?: Browser): Promise<string>;
  /** What a browser would send from the form at `path`, as it was drawn. */
  formAt(path: string): Promise<Record<string, string>>;
  valve(tag: string): Promise<Valve>;
  /** Kinds of the entries of a valve. */
  entries(tag: string): Promise<readonly string[]>;
  close(): Promise<void>;
}

export async function aValveSite(): Promise<ValveSite> {
  const app = await anApp({ people: true });
  const engineer = (await app.signedIn('engineer')).browser;
  const technician = (await app.signedIn('technician')).browser;
  const withId = (fields: Texts) => ({ requestId: newRequestId(), ...fields });
  const seen = async (path: string, as = engineer): Promise<string> => {
    const response = await app.get(path, { as });
    expect(response.status, path).toBe(200);
    const html = await response.text();
    expect(readHtml(html).faults, path).toEqual([]);
    return html;
  };
  return {
    app,
    engineer,
    technician,
    posted: (path, fields, as = engineer) => app.post(path, withId(fields), { as }),
    json: (path, fields, as = engineer) => app.postJson(path, withId(fields), { as }),
    seen,
    formAt: async (path) => sentFrom(await seen(path)),
    valve: (tag) => app.services.log.state(valveKind, tag),
    entries: async (tag) =>
      (await app.services.log.entriesOf(streamOf('valve', tag))).map(({ kind }) => kind),
    close: () => app.close(),
  };
}

function sentFrom(html: string): Record<string, string> {
  const { elements } = readHtml(html);
  const fields: Record<string, string> = {};
  for (const element of elements) {
    const name = attributeOf(element, 'name');
    if (name === undefined) continue;
    if (element.tagName === 'input') fields[name] = attributeOf(element, 'value') ?? '';
    if (element.tagName === 'textarea') fields[name] = textOf(element);
    if (element.tagName === 'select') {
      const options = elements.filter((each) => each.tagName === 'option' && each.parentNode === element);
      const chosen = options.find((each) => attributeOf(each, 'selected') !== undefined) ?? options[0];
      fields[name] = chosen === undefined ? '' : (attributeOf(chosen, 'value') ?? '');
    }
  }
  // The choice of light or dark stands on every page and is a form of its own.
  delete fields.screen;
  return fields;
}

/** The texts of FV-214 as its form sends them: the tag stands in the address. */
export function withoutTag(): Texts {
  const { tag: _, ...rest } = FV_214;
  return rest;
}
