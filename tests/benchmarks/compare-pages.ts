/** Asks for every page of a small site and of a big one in turn, so that a busy machine slows both alike. */
import type { Route } from '../../server/http/route.ts';
import { type AnApp, anApp, Browser } from '../server/an-app.ts';

const RATIO_MAX = 1.5;
/** Below this a page is as quick as anybody notices, and its ratio is noise. */
const NOTICED_MS = 5;
/** Whole logs and exports, and what never ends: their time is in the amount that they give. */
const LEFT_OUT =
  /^(?:practise)?(?:listenLive|exportLog|exportValves|exportNoted|exportPlans|exportGear|exportAudit|servesAsset|showAsset|calculate)/i;
/** Pages that are asked for by a question as well: what is looked for among all must not be dearer for that. */
const ASKED: Readonly<Record<string, readonly string[]>> = {
  listValves: ['?find=no+such+valve', '?find=FV-100007'],
};

export interface Site {
  readonly app: AnApp;
  readonly browser: Browser;
  readonly names: Readonly<Record<string, string>>;
}

export async function openSite(folder: string, names: Site['names']): Promise<Site> {
  const app = await anApp({ folder });
  const by = { requestId: crypto.randomUUID(), person: null, screen: 'benchmark' };
  const person = await app.services.people.addWithPin(
    { name: `Engineer of the benchmark ${by.requestId.slice(0, 8)}`, role: 'engineer', pin: '826491' },
    by,
  );
  const browser = new Browser();
  // A number of its own: a kept site has seen those of the runs before.
  const signIn = { who: person.id, pin: '826491', requestId: crypto.randomUUID() };
  const answer = await app.post('/sign-in', signIn, { as: browser });
  if (answer.status >= 400) throw new Error(`Signing in gave ${answer.status}.`);
  return { app, browser, names };
}

function pathOf({ path }: Route, { names }: Site): string {
  const kind = path.split('/')[1] ?? '';
  return path.replace(/:\w+(\{[^}]*\})?/g, encodeURIComponent(names[kind] ?? 'x'));
}

interface Took {
  readonly wallMs: number;
  /** Of the processor, which does not count what others of the machine take. */
  readonly cpuMs: number;
}

/** Null for what is not there. */
async function ask(site: Site, path: string): Promise<Took | null> {
  const cpu = process.cpuUsage();
  const begunMs = performance.now();
  const response = await site.app.get(path, { as: site.browser });
  await response.arrayBuffer();
  const wallMs = performance.now() - begunMs;
  const { user, system } = process.cpuUsage(cpu);
  const location = response.headers.get('location') ?? '';
  if (location.startsWith('/sign-in')) throw new Error(`${path} wants a sign-in.`);
  if (location.startsWith('/long-work/')) await whole(site, location);
  return response.status >= 400 ? null : { wallMs, cpuMs: (user + system) / 1000 };
}

/** A page that first reads much sends on to how far that is; it is asked for again when all is read. */
async function whole(site: Site, work: string): Promise<void> {
  const begunMs = performance.now();
  for (let state = 'going'; state === 'going'; ) {
    await new Promise((resolve) => setTimeout(resolve, 200));
    const answer = await site.app.get(work, { as: site.browser, headers: { accept: 'application/json' } });
    ({ state } = (await answer.json()) as { state: string });
  }
  console.log(`  read as long work in ${((performance.now() - begunMs) / 1000).toFixed(1)} s`);
}

interface Times {
  readonly first: Took;
  /** Half take at most so long, of the processor. */
  readonly middleMs: number;
  /** 95 of a hundred take at most so long. */
  readonly wallMs: number;
  readonly cpuMs: number;
}

function timesOf([first, ...rest]: readonly Took[]): Times {
  const share = (of: (took: Took) => number, part = 0.95): number => {
    const sorted = rest.map(of).sort((one, other) => one - other);
    return sorted[Math.ceil(sorted.length * part) - 1] ?? Number.NaN;
  };
  if (first === undefined) throw new Error('Nothing was asked.');
  return {
    first,
    middleMs: share(({ cpuMs }) => cpuMs, 0.5),
    wallMs: share(({ wallMs }) => wallMs),
    cpuMs: share(({ cpuMs }) => cpuMs),
  };
}

interface Sites {
  readonly small: Site;
  readonly big: Site;
}

async function compare(
  { small, big }: Sites,
  of: { readonly route: Route; readonly query: string; readonly times: number },
) {
  const [ofSmall, ofBig]: [Took[], Took[]] = [[], []];
  for (let time = 0; time <= of.times; time += 1) {
    const one = await ask(small, pathOf(of.route, small) + of.query);
    const other = await ask(big, pathOf(of.route, big) + of.query);
    if (one === null || other === null) return null;
    ofSmall.push(one);
    ofBig.push(other);
  }
  return { one: timesOf(ofSmall), other: timesOf(ofBig) };
}

export interface Comparing extends Sites {
  /** How often each page is asked for beside its first time. */
  readonly times: number;
  /** Names of routes. */
  readonly only: RegExp;
}

/** Prints each page that is slower on the big site. @returns how many are, by the clock and by the processor */
export async function comparePages(
  of: Comparing,
): Promise<{ readonly byWall: number; readonly byCpu: number; readonly byMiddle: number }> {
  let [pages, excused, byWall, byCpu, byMiddle] = [0, 0, 0, 0, 0];
  for (const route of of.big.app.routes) {
    if (route.method !== 'GET' || LEFT_OUT.test(route.name) || !of.only.test(route.name)) continue;
    for (const query of ['', ...(ASKED[route.name] ?? [])]) {
      const times = await compare(of, { route, query, times: of.times });
      if (times === null) continue;
      const { one, other } = times;
      pages += 1;
      const [wall, cpu] = [other.wallMs / one.wallMs, other.cpuMs / one.cpuMs];
      if (wall <= RATIO_MAX && cpu <= RATIO_MAX) continue;
      const isNoticed = other.wallMs > NOTICED_MS;
      if (!isNoticed) excused += 1;
      if (other.middleMs > RATIO_MAX * one.middleMs && other.middleMs > NOTICED_MS) byMiddle += 1;
      if (wall > RATIO_MAX && isNoticed) byWall += 1;
      if (cpu > RATIO_MAX && isNoticed) byCpu += 1;
      // At once: a run that is cut short has told what it knew.
      console.log(
        `  ${(route.name + query).padEnd(28)} ${one.wallMs.toFixed(1)} -> ${other.wallMs.toFixed(1)} ms (${wall.toFixed(1)}), processor ${one.cpuMs.toFixed(1)} -> ${other.cpuMs.toFixed(1)} ms (${cpu.toFixed(1)}), middle ${one.middleMs.toFixed(1)} -> ${other.middleMs.toFixed(1)} ms, first ${other.first.wallMs.toFixed(0)} ms`,
      );
    }
  }
  console.log(
    `${pages} pages, 95 % of ${of.times}: slower than ${RATIO_MAX} times the small site are ${byWall} by the clock, ${byCpu} by the processor, and ${byMiddle} by the middle of that; ${excused} more take ${NOTICED_MS} ms at most`,
  );
  return { byWall, byCpu, byMiddle };
}
