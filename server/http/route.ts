/** Routes as data: what is served, who may ask for it, what it takes and what it answers. */
import { z } from 'zod';
import type { RefusalText } from '../../safety/refusal.ts';
import type { Language } from '../../views/language/language.ts';
import type { Person, Role } from '../people/person.ts';
import type { Services } from '../services.ts';
import type { Banner } from './banners.ts';
import type { Cookies } from './cookies.ts';
import type { UploadedFile } from './decode.ts';
import { type Fields, type FieldsSchema, readFields } from './fields.ts';

/** Who may ask: anyone, whoever is signed in, or certain roles. */
export type Access = 'anyone' | 'signed-in' | readonly Role[];

/** Something to draw: a template below `views/` and what it needs. */
export interface View {
  readonly template: string;
  readonly params: object;
}

/** A whole page. Its template also gets `page`, `shell` and `newRequestId`, see `shell.ts`. */
export interface PageView extends View {
  readonly title: string;
}

/** A file or another answer that is neither page nor JSON. */
export interface Raw {
  readonly contentType: string;
  readonly body: string | Uint8Array<ArrayBuffer> | ReadableStream;
  /** Makes the browser save it under this name. */
  readonly fileName?: string;
  /** Never another content under this address: browsers keep it for good. */
  readonly immutable?: true;
  /** The same for whoever may see it: kept by their own browser alone, and shown by it as a picture or not at all. */
  readonly immutablePicture?: true;
}

export interface Reply<Answer = unknown> {
  /** The answer to a JSON client. */
  readonly data: Answer;
  /** 200 unless given; a page sent to another address gets 303. */
  readonly status?: 200 | 201 | 202 | 204;
  readonly page?: PageView;
  /** The piece for htmx; without it htmx is sent to `seeOther`, or gets the page. */
  readonly fragment?: View;
  /** Where a browser goes after a post that was done. */
  readonly seeOther?: string;
  /** The data is the outcome alone, as was asked for. */
  readonly isOutcome?: true;
  readonly raw?: Raw;
  /** Values of Set-Cookie, made by `cookies.ts`. */
  readonly cookies?: readonly string[];
}

/**
 * In the place of an answer when an act was refused: the form again, with what was typed, or the page on which the act
 * can be done.
 */
export type Again = Pick<Reply, 'page' | 'fragment' | 'seeOther'>;

export interface BareCall {
  readonly services: Services;
  /** Who is signed in at this screen. */
  readonly person: Person | null;
  /** The screen's name, as entries carry it: `screen 3`. */
  readonly screen: string;
  /** The id that the form carried; its act is recorded once, however often it is sent. */
  readonly requestId: string;
  /** The pieces of the address, `id` of `/valves/:id`. */
  readonly params: Readonly<Record<string, string>>;
  readonly now: Date;
  readonly cookies: Cookies;
  /** What pages are written in for whoever asks; entries and JSON never are. */
  readonly language: Language;
  /** Which of the server's own addresses the request came to. */
  readonly origin: string;
  /** The page that the request says it came from, not to be believed; blank if it says nothing. */
  readonly referer: string;
  /** A page or a piece of one is wanted, by somebody who looks; a program waits for its answer. */
  readonly wantsPage: boolean;
  /** A program wants to know what came of its act and nothing more, where the route says that it may. */
  readonly wantsOutcome: boolean;
  /** What stands above every page now. */
  readonly banners: readonly Banner[];
}

export interface Call<Body = unknown, Query = unknown, Who = Person | null> extends BareCall {
  readonly person: Who & BareCall['person'];
  readonly body: Body;
  readonly query: Query;
  /** Null where none was chosen, or none is taken. */
  readonly file: UploadedFile | null;
}

/** What came, before any schema. */
export interface Typed {
  readonly body: Fields;
  readonly file?: UploadedFile | null;
  readonly query: Fields;
}

export interface RefusedCall extends BareCall {
  readonly typed: Fields;
  readonly query: Fields;
  readonly refusal: RefusalText;
}

interface RouteHead {
  readonly method: 'GET' | 'POST';
  /** `/valves/:id/revisions` */
  readonly path: `/${string}`;
  /** Unlike any other: the operation's id for JSON clients, `saveValveSheet`. */
  readonly name: string;
  /** One line for JSON clients. */
  readonly summary: string;
  /** Largest body that it takes, 256 KiB unless given. */
  readonly bodyBytesMax?: number;
  /** The field of its form that a file comes in; without it, none is taken. */
  readonly fileField?: string;
  /** A form may come with files: each counts as the text of its field. */
  readonly takesTextFiles?: true;
  /** A program may ask for the outcome alone, by `Prefer: return=minimal`. */
  readonly mayTellOutcome?: true;
  /** Asked by the screen itself, not by a hand: does not count as somebody being there. */
  readonly background?: boolean;
  /** Stands in the menu of those who may ask for it. */
  readonly menu?: { readonly text: string; readonly order: number };
  /** Served by the practice bench, from its own database. */
  readonly isPractice?: boolean;
  /** What the raw answer's type is, where it is not JSON alone. */
  readonly rawType?: string;
  /**
   * Draws the form again after a refusal. Without it the refusal stands on a page of its own.
   */
  refused?(call: RefusedCall): Again | Promise<Again>;
}

export interface RouteSpec<
  Roles extends Access,
  Body extends FieldsSchema,
  Query extends FieldsSchema,
  Answer extends z.ZodType,
> extends RouteHead {
  readonly roles: Roles;
  /** The fields, all texts; `requestId` is taken out before and need not be named. */
  readonly body?: Body;
  readonly query?: Query;
  /** The JSON answer. */
  readonly answer: Answer;
  handle(
    call: Call<z.output<Body>, z.output<Query>, Roles extends 'anyone' ? Person | null : Person>,
  ): Reply<z.input<Answer>> | Promise<Reply<z.input<Answer>>>;
}

export interface Route extends RouteHead {
  readonly roles: Access;
  readonly body?: FieldsSchema;
  readonly query?: FieldsSchema;
  readonly answer: z.ZodType;
  /** @throws Refusal for fields that its schemas do not take, and whatever its handler throws */
  run(call: BareCall, typed: Typed): Promise<Reply>;
}

/**
 * One route. Its handler gets the fields as its schemas make them, and a person wherever one must be signed in.
 *
 * @example
 * export const retireGear = route({
 *   method: 'POST',
 *   path: '/gear/:id/retire',
 *   name: 'retireGear',
 *   summary: 'Retire a piece of test gear',
 *   roles: ['engineer'],
 *   body: z.object({ why: text({ called: 'the reason' }) }),
 *   answer: z.object({ id: z.string() }),
 *   handle: async ({ services, person, params, body }) => ({ data: { id }, seeOther: '/gear' }),
 * });
 */
export function route<
  const Roles extends Access,
  Body extends FieldsSchema,
  Query extends FieldsSchema,
  Answer extends z.ZodType,
>(spec: RouteSpec<Roles, Body, Query, Answer>): Route {
  const own = {
    run: async (bare: BareCall, typed: Typed) => {
      if (spec.roles !== 'anyone' && bare.person === null)
        throw new TypeError(`${spec.name} needs a person.`);
      const call = {
        ...bare,
        file: typed.file ?? null,
        body: spec.body ? readFields(spec.body, { fields: typed.body, from: 'form' }) : noFields(typed.body),
        query: spec.query ? readFields(spec.query, { fields: typed.query, from: 'address' }) : {},
      };
      // Without a schema nothing is read, and the handler's type says so; who is signed in was checked above.
      return await spec.handle(call as Parameters<typeof spec.handle>[0]);
    },
  };
  // Not spread: schemas that are made when they are first asked for stay so.
  return Object.defineProperties(own, Object.getOwnPropertyDescriptors(spec)) as typeof own & typeof spec;
}

const NO_FIELDS = z.object({});

/** A route that takes no field is told none either. */
function noFields(fields: Fields): object {
  return readFields(NO_FIELDS, { fields, from: 'form' });
}

/** May somebody in this role, or nobody, ask for it? */
export function mayAsk(roles: Access, role: Role | null): boolean {
  if (roles === 'anyone') return true;
  if (role === null) return false;
  return roles === 'signed-in' || roles.includes(role);
}
