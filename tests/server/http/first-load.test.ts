import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { PROCEDURES, procedureNamed } from '../../../procedures/served.ts';
import type { Place, ServedProcedure } from '../../../procedures/served-procedure.ts';
import type { ValveSheet } from '../../../procedures/valve-sheet/sheet.ts';
import { DEMO_VALVES } from '../../../server/demo/demo-valves.ts';
import { ASSET_FILES } from '../../../views/assets.ts';
import { answersFor } from '../../builders/answers.ts';
import { aSheet, sheetOf } from '../../builders/sheets.ts';
import { openSiteJob } from '../../builders/site-jobs.ts';
import { ROOT } from '../../root.ts';
import { attributeOf, readHtml } from '../../views/html.ts';
import { type AnApp, anApp, type Browser } from '../an-app.ts';
import { FaultFinder } from '../jobs/fault-finder.ts';
import { withValve } from '../jobs/site.ts';
import { BenchClient } from '../practice/a-bench.ts';

let app: AnApp;
beforeAll(async () => {
  app = await anApp({ people: true });
});
afterAll(() => app.close());

/** What browsers take over TLS and from their own machine, and what they take over plain HTTP from another one. */
const CODINGS = ['gzip, deflate, br', 'gzip, deflate'];

/** What a first load may weigh at most, in bytes on the wire (60 kB of 1,000). */
const MOST_BYTES = 60_000;
/** By address. */
type Bytes = Readonly<Record<string, number>>;

const LONG = process.env.YOKESIDE_LONG === '1';
/** A job that answers send round in a circle is left there. */
const CARDS_MOST = 140;

interface Loaded {
  readonly path: string;
  readonly coding: string;
  readonly as?: Browser | undefined;
}

const files = new Map<string, number>();

async function bytesOf(path: string, { coding, as }: Omit<Loaded, 'path'>): Promise<number> {
  const sent = { headers: { 'accept-encoding': coding }, ...(as === undefined ? {} : { as }) };
  const answer = await app.get(path, sent);
  expect(answer.status, path).toBe(200);
  return (await answer.arrayBuffer()).byteLength;
}

/**
 * All that a browser fetches at a first look: the page, everything its head names, and what the scripts among them
 * fetch by themselves once it stands; as bytes on the wire. Files are measured once: their address changes with them.
 */
async function loadOf({ path, ...of }: Loaded): Promise<Bytes> {
  const html = await (await app.get(path, of.as === undefined ? {} : { as: of.as })).text();
  const bytes: Record<string, number> = { [path]: await bytesOf(path, of) };
  for (const address of await namedBy(html)) {
    expect(address, 'nothing comes from elsewhere').toMatch(/^\/[^/]/);
    const known = files.get(`${of.coding} ${address}`) ?? (await bytesOf(address, of));
    files.set(`${of.coding} ${address}`, known);
    bytes[address] = known;
  }
  return bytes;
}

async function namedBy(html: string): Promise<ReadonlySet<string>> {
  const named = readHtml(html).elements.flatMap((one) => {
    const at = attributeOf(one, 'src') ?? (one.tagName === 'link' ? attributeOf(one, 'href') : undefined);
    return at === undefined ? [] : [at];
  });
  const scripts = named.filter((address) => address.endsWith('/yokeside.js'));
  const later = await Promise.all(
    scripts.map(async (address) => {
      const script = await (await app.get(address)).text();
      const parts = Array.from(
        script.matchAll(/import\(['"`]\.\/([\w.-]+)['"`]\)/g),
        ([, part = '']) => part,
      );
      return parts.map((part) => address.replace('yokeside.js', part));
    }),
  );
  return new Set([...named, ...later.flat()]);
}

/** Holds a page under the limit, in every language and coding. */
async function expectLight(path: string, as: Browser, what = path): Promise<void> {
  for (const language of ['es', 'en']) {
    await app.post('/language', { language }, { as });
    for (const coding of CODINGS) {
      const bytes = await loadOf({ path, coding, as });
      const said = `${what}, ${language}, ${coding}: ${sum(bytes)} ${JSON.stringify(bytes)}`;
      if (process.env.YOKESIDE_WEIGHTS) console.log(said);
      expect(sum(bytes), said).toBeLessThan(MOST_BYTES);
    }
  }
}

test.each(CODINGS)(
  'the first page is under 60 kB on the wire, letters and script too, and asks nobody else: %s',
  async (coding) => {
    const bytes = await loadOf({ path: '/sign-in', coding });
    expect(Object.keys(bytes).length).toBeGreaterThan(5);
    expect(sum(bytes), JSON.stringify(bytes)).toBeLessThan(MOST_BYTES);
  },
);

test('the page of a job and the shift list are under 60 kB too, with everything drawn on them', async () => {
  const { browser, person: technician } = await app.signedIn('technician');
  const { person: supervisor } = await app.signedIn('supervisor');
  const job = await openSiteJob(app, { technician, supervisor, place: 'line' });
  for (const path of [`/jobs/${job.id}`, '/shift']) await expectLight(path, browser);
});

/** Whose time at the screen does not run out, however far the clock of a job was moved on. */
const reader = async (): Promise<Browser> => (await app.signedIn('technician')).browser;

interface Played {
  readonly procedure: ServedProcedure;
  readonly sheet: ValveSheet;
  readonly place: Place;
}

/** Plays a job to its end, or until it would go round for good, and looks at each card before it is answered. */
async function playLooking(
  { procedure: { definition }, sheet, place }: Played,
  look: (path: string, step: string) => Promise<void>,
): Promise<void> {
  const [{ person: technician }, { person: supervisor }] = [
    await app.signedIn('technician'),
    await app.signedIn('supervisor'),
  ];
  const job = await openSiteJob(app, { technician, supervisor, sheet, place, procedure: definition.id });
  for (let cards = 0; cards < CARDS_MOST; cards += 1) {
    const now = await job.job();
    const step = definition.steps[now.step];
    await look(`/jobs/${job.id}`, now.step);
    if (now.status === 'closed' || step === undefined || step.kind === 'end') return;
    if (step.kind === 'wait') app.wait(step.waitS * 1000);
    if (step.kind === 'hold' || definition.id === 'stroke-check') await job.playOne();
    else await job.answer(answersFor(now, { step }));
  }
}

const served = (id: string): ServedProcedure => {
  const procedure = procedureNamed(id);
  if (procedure === undefined) throw new Error(`${id} is not served`);
  return procedure;
};

/** The valve of the demo plant, under another tag for each job. */
function valve(tag: string, as = tag): ValveSheet {
  const texts = DEMO_VALVES.find((one) => one.tag === tag);
  if (texts === undefined) throw new Error(`the demo plant has no ${tag}`);
  return { ...sheetOf(texts), tag: as };
}

/** Of commissioning and overhaul, the jobs and cards whose pages are the heaviest, as the long run found them. */
const HEAVIEST: readonly (readonly [string, string, readonly string[]])[] = [
  ['stroke-check', 'FV-101', ['holdWork', 'asFoundVerdict', 'asLeftVerdict', 'signReturn', 'loopBack']],
  ['spring-change', 'FV-203', ['asLeftVerdict']],
];

test.each(HEAVIEST)(
  '%s half through, with all its lines and the news of other screens, is under 60 kB in both languages',
  {
    timeout: 120_000,
  },
  async (id, tag, heaviest) => {
    const left = new Set(heaviest);
    await playLooking(
      { procedure: served(id), sheet: valve(tag, 'FV-216'), place: 'line' },
      async (path, step) => {
        if (left.delete(step)) await expectLight(path, await reader(), `${id} ${step}`);
      },
    );
    expect([...left]).toEqual([]);
  },
);

/** Checks of a valve in service, and what is found, so that the causes stay many and each has its bar. */
const FOUND = Object.entries({
  controllerOutput: 'in line',
  handwheelAndStops: 'neutral',
  smallStep: 'smooth',
  fluidOutside: 'bonnet',
  soapSignalTube: 'bubbles',
  soapStemSeal: 'none',
  couplingMarks: 'slipped',
  stemAndGland: 'bright',
  travelAgainstOutput: 'more open',
  controllerMode: 'held',
  flowAgainstTravel: 'as the curve',
  soapAdjuster: 'none',
});
/** A line behind another weighs 45 bytes: an ordinary run has fewer of them. */
const CHECKS = LONG ? FOUND : FOUND.slice(0, 6);

test('a search for a fault, with the checks behind it and its bars, is under 60 kB in both languages', {
  timeout: 120_000,
}, async () => {
  await withValve(app, aSheet({ tag: 'FV-217' }));
  const signer = (await app.signedIn('supervisor')).person;
  const finder = new FaultFinder(app, { as: await reader(), signer });
  await finder.open('FV-217');
  await finder.toHub({ symptom: 'slow' });
  for (const [check, found] of CHECKS) await finder.check(check, { found });
  await expectLight(`/jobs/${finder.id}`, await reader(), 'find-the-fault at its hub');
  await finder.answer({ hubChoice: 'lineUp' });
  await expectLight(`/jobs/${finder.id}`, await reader(), 'find-the-fault at a check');
});

test('a practice exercise half through, with its gauges, is under 60 kB in both languages', {
  timeout: 120_000,
}, async () => {
  await withValve(app, aSheet());
  const bench = new BenchClient(app, await reader());
  await bench.set({ how: 'drawn' });
  for (let acts = 0; (await bench.told()).step !== 'inService'; acts += 1) {
    expect(acts).toBeLessThan(8);
    await bench.asShown();
  }
  for (const [at, [check]] of CHECKS.slice(0, LONG ? undefined : 3).entries()) {
    await bench.act({ hubChoice: check });
    if (at === 2) await expectLight(`/practice/jobs/${bench.job}`, await reader(), 'practice with gauges');
    await bench.asShown();
  }
  await expectLight(`/practice/jobs/${bench.job}`, await reader(), 'practice at its hub');
});

/** Each procedure on the first valve that may have it, in the line and on the bench; the whole of a load on every card. */
const EVERYWHERE = PROCEDURES.flatMap((procedure) =>
  (['line', 'bench'] as const).flatMap((place) => {
    const fits = DEMO_VALVES.find((texts) => procedure.whyNot(sheetOf(texts), place) === null);
    return fits?.tag === undefined ? [] : [[procedure.definition.id, place, fits.tag] as const];
  }),
);

test.runIf(LONG).each(EVERYWHERE)(
  '%s %s on every card',
  {
    timeout: 600_000,
  },
  async (id, place, tag) => {
    const own = `FV-${300 + EVERYWHERE.findIndex((one) => one[0] === id && one[1] === place)}`;
    await playLooking({ procedure: served(id), sheet: valve(tag, own), place }, async (path, step) => {
      await expectLight(path, await reader(), `${id} ${place} ${step}`);
    });
  },
);

test('a job, its hold too, bears no class whose rules stand only in style sheets that it does not load', async () => {
  const { browser, person: technician } = await app.signedIn('technician');
  const { person: supervisor } = await app.signedIn('supervisor');
  const job = await openSiteJob(app, {
    technician,
    supervisor,
    place: 'line',
    sheet: aSheet({ tag: 'FV-215' }),
  });
  const elsewhere = classesOf('pages.css').filter((name) => !classesOf('style.css').includes(name));
  expect(elsewhere.length).toBeGreaterThan(20);
  for (const step of [(await job.job()).step, 'holdWork']) {
    await job.playTo(step);
    const html = await (await app.get(`/jobs/${job.id}`, { as: browser })).text();
    const borne = readHtml(html).elements.flatMap((one) => (attributeOf(one, 'class') ?? '').split(/\s+/));
    expect(borne).toContain('sheet-fill');
    expect(
      [...new Set(borne)].filter((name) => elsewhere.includes(name)),
      step,
    ).toEqual([]);
  }
});

/** Class names that the rules of a served style sheet name. */
function classesOf(file: string): readonly string[] {
  const source = ASSET_FILES[file];
  if (source === undefined || !('parts' in source)) throw new TypeError(`${file} is no style sheet of ours.`);
  const css = source.parts.map((part) => readFileSync(join(ROOT, 'views', part), 'utf8')).join('\n');
  return Array.from(
    css.replace(/\/\*[\s\S]*?\*\//g, '').matchAll(/\.([a-z][\w-]*)(?=[^{}]*\{)/g),
    ([, name = '']) => name,
  );
}

function sum(bytes: Readonly<Record<string, number>>): number {
  return Object.values(bytes).reduce((all, one) => all + one, 0);
}
