import { SCREEN_COOKIE, screenChoice } from '../../views/screen-choice.ts';
import { ROLE_WORDS } from '../people/person.ts';
import type { Problem } from './errors.ts';
import { type BareCall, mayAsk, type PageView, type Route, type View } from './route.ts';

export interface MenuLine {
  readonly href: string;
  readonly text: string;
}

/** What a person in their role, or nobody, finds in the menu. */
export function menuFor(routes: readonly Route[], call: Pick<BareCall, 'person'>): readonly MenuLine[] {
  return routes
    .flatMap(({ menu, path, roles }) =>
      menu !== undefined && mayAsk(roles, call.person?.role ?? null) ? [{ ...menu, href: path }] : [],
    )
    .sort((one, other) => one.order - other.order)
    .map(({ href, text }) => ({ href, text }));
}

/**
 * What every template gets beside its own params:
 * `page` for the layout; `shell` with who is signed in, the screen's name, the menu and what stands above all pages; `newRequestId()`, to be
 * called once for each form; `refusal`, null or what the refusal component draws; `wrong`, a message by field name.
 */
export function shellParams(
  view: PageView | View,
  { call, menu, problem }: { call: BareCall; menu: readonly MenuLine[]; problem: Problem | null },
): object {
  const { person, screen, services } = call;
  return {
    ...view.params,
    page: {
      lang: call.language,
      title: 'title' in view ? view.title : '',
      screen: screenChoice(call.cookies.all[SCREEN_COOKIE]),
      person: person?.id ?? '',
      notice: '',
    },
    shell: {
      person: person === null ? null : { id: person.id, name: person.name, role: ROLE_WORDS[person.role] },
      screen,
      idleS: services.settings.sessionIdleMinutesMax * 60,
      menu,
      banners: call.banners,
      /** On the practice bench every page and print says so. */
      practice: services.bench !== null,
    },
    newRequestId: () => services.newId(),
    refusal: problem === null ? null : refusalParams(problem),
    wrong: problem?.fields ?? {},
  };
}

/** As the refusal component takes it: each wrong field with a link to it. */
function refusalParams({ code, what, kept, next, fields }: Problem): object {
  return {
    code,
    what,
    kept,
    next,
    fields: Object.entries(fields ?? {}).map(([name, text]) => ({ href: `#${name}`, text })),
  };
}
