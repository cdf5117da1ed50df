/** The screens of the site: which they are, and what they are called. */
import { z } from 'zod';
import { notFound } from '../http/errors.ts';
import { optionalText } from '../http/fields.ts';
import { type BareCall, type PageView, type Route, route } from '../http/route.ts';
import { ADDERS } from '../people/roll.ts';
import { nameScreen } from '../people/site-acts.ts';
import { screenShown, siteKind } from '../site-stream.ts';
import { byOf, typedIn } from './parts.ts';

const screenAnswer = z.object({ number: z.int(), name: z.string(), isOfTheSite: z.boolean() });

async function screensOf({ services }: BareCall) {
  const { screens } = await services.log.state(siteKind);
  return (await services.people.screens()).map((screen) => ({
    number: Number(screen.replace('screen ', '')),
    name: screens[screen] ?? '',
    isOfTheSite: screens[screen] !== undefined,
    shown: screenShown({ screens }, screen),
  }));
}

async function screensPage(
  call: BareCall,
  typed: { readonly number: string; readonly name: string },
): Promise<PageView> {
  const rows = (await screensOf(call)).map(({ number, name, shown }) => ({
    number,
    name: typed.number === String(number) ? typed.name : name,
    isWrong: typed.number === String(number),
    isThis: shown === call.screen,
  }));
  return { title: 'Screens', template: 'pages/screens.njk', params: { rows } };
}

const listScreens = route({
  method: 'GET',
  path: '/screens',
  name: 'listScreens',
  summary: 'Every screen where somebody has signed in, and which of them are the site’s own',
  roles: ADDERS,
  answer: z.object({ screens: z.array(screenAnswer) }),
  handle: async (call) => {
    const screens = (await screensOf(call)).map(({ shown: _, ...screen }) => screen);
    return { data: { screens }, page: await screensPage(call, { number: '', name: '' }) };
  },
});

const setScreenName = route({
  method: 'POST',
  path: '/screens/:number/name',
  name: 'setScreenName',
  summary: 'Make a screen one of the site under a name of its own; a blank name takes it off again',
  roles: ADDERS,
  body: z.object({ name: optionalText({ called: 'the name', max: 40 }) }),
  answer: z.object({ screen: z.string(), name: z.string() }),
  refused: async (call) => {
    const { name } = typedIn(call.typed, ['name']);
    return { page: await screensPage(call, { number: call.params.number ?? '', name }) };
  },
  handle: async (call) => {
    const screen = `screen ${call.params.number}`;
    if (!(await call.services.people.screens()).includes(screen)) throw notFound();
    const { name } = call.body;
    await nameScreen(call.services.log, { screen, name, by: byOf(call) });
    return { data: { screen, name }, seeOther: '/screens' };
  },
});

export const screenRoutes: readonly Route[] = [listScreens, setScreenName];
