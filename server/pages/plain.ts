/** Pages that ask nothing of the log: help, the look of the screen, every part of the style, and a sign of life. */
import { z } from 'zod';
import { SCREEN_CHOICES, SCREEN_COOKIE, screenChoice } from '../../views/screen-choice.ts';
import { styleView } from '../../views/style-page.ts';
import { optionalText } from '../http/fields.ts';
import { type Route, route } from '../http/route.ts';
import { backTo } from './parts.ts';

const showHelp = route({
  method: 'GET',
  path: '/help',
  name: 'showHelp',
  summary: 'What the words mean, and whom to ask',
  roles: 'anyone',
  answer: z.object({ title: z.string() }),
  handle: () => ({
    data: { title: 'Help' },
    page: { title: 'Help', template: 'pages/help.njk', params: {} },
  }),
});

const YEAR_S = 365 * 24 * 3600;
const CHOICES = Object.keys(SCREEN_CHOICES);

const chooseScreen = route({
  method: 'POST',
  path: '/screen',
  name: 'chooseScreen',
  summary: `How this screen looks: ${CHOICES.join(', ')}`,
  roles: 'anyone',
  body: z.object({ screen: optionalText({ called: 'the look', max: 20 }) }),
  answer: z.object({ screen: z.string() }),
  handle: ({ body, origin, referer }) => {
    const { name } = screenChoice(body.screen);
    // Not hidden from scripts: the page's own script changes it too, without asking the server.
    const cookie = `${SCREEN_COOKIE}=${name}; Path=/; SameSite=Strict; Max-Age=${YEAR_S}`;
    return { data: { screen: name }, seeOther: backTo(referer, origin), cookies: [cookie] };
  },
});

const showStyle = route({
  method: 'GET',
  path: '/style',
  name: 'showStyle',
  summary: 'Every part of a page in every state',
  roles: 'anyone',
  answer: z.object({ title: z.string() }),
  handle: ({ services, cookies }) => {
    const params = styleView({ renderer: services.views, screen: screenChoice(cookies.all[SCREEN_COOKIE]) });
    return { data: { title: 'Style' }, page: { title: 'Style', template: 'pages/style.njk', params } };
  },
});

const isAlive = route({
  method: 'GET',
  path: '/alive',
  name: 'isAlive',
  summary: 'Whether the server answers and can read its log',
  roles: 'anyone',
  background: true,
  answer: z.object({ alive: z.boolean(), entries: z.int() }),
  handle: async ({ services }) => ({ data: { alive: true, entries: (await services.log.head()).seq } }),
});

export const plainRoutes: readonly Route[] = [showHelp, chooseScreen, showStyle, isAlive];
