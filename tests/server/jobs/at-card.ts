/** A job that stands at a card of a whole server, and what its people send to it, as JSON and as forms. */
import { expect } from 'vitest';
import { streamOf } from '../../../server/log/stream-kind.ts';
import type { Person } from '../../../server/people/person.ts';
import { openSiteJob, type SiteJob } from '../../builders/site-jobs.ts';
import { attributeOf, readHtml } from '../../views/html.ts';
import { type AnApp, anApp, type Browser, newRequestId } from '../an-app.ts';
import { textOf } from '../pages/texts.ts';

export type Texts = Readonly<Record<string, string>>;

export interface Problem {
  readonly code: string;
  readonly what: string;
  readonly kept: string;
  readonly next: string;
  readonly fields?: Texts;
}

interface SignedIn {
  readonly browser: Browser;
  readonly person: Person;
}

export interface AtCard {
  readonly app: AnApp;
  readonly technician: SignedIn;
  readonly supervisor: SignedIn;
  readonly job: SiteJob;
  /** Address that acts are posted to. */
  readonly acts: string;
  /** What a form of the open card holds besides what is typed. */
  cardFields(act: string): Promise<Texts>;
  /** As the technician, unless another browser is named. */
  sendJson(fields: object, as?: Browser): Promise<{ readonly status: number; readonly problem: Problem }>;
  sendForm(fields: Texts, as?: Browser): Promise<{ readonly status: number; readonly html: string }>;
  /** How many entries the job has. */
  length(): Promise<number>;
  close(): Promise<void>;
}

/** A job in the line that stands at a step, with everybody signed in afterwards. */
export async function atCard(step: string): Promise<AtCard> {
  const app = await anApp({ people: true });
  const [first, second] = [await app.signedIn('technician'), await app.signedIn('supervisor')];
  const job = await openSiteJob(app, { technician: first.person, supervisor: second.person });
  await job.playTo(step);
  // The clock went on with every card before: the sessions of the start may have ended.
  const [technician, supervisor] = [await app.signedIn('technician'), await app.signedIn('supervisor')];
  const acts = `/jobs/${job.id}/acts`;
  return {
    app,
    technician,
    supervisor,
    job,
    acts,
    cardFields: async (act) => {
      const { place, step: open } = await job.job();
      return { requestId: newRequestId(), act, place: String(place), step: open };
    },
    sendJson: async (fields, as = technician.browser) => {
      const response = await app.postJson(acts, fields, { as });
      return { status: response.status, problem: (await response.json()) as Problem };
    },
    sendForm: async (fields, as = technician.browser) => {
      const response = await app.post(acts, fields, { as });
      return { status: response.status, html: await response.text() };
    },
    length: async () => (await app.services.log.entriesOf(streamOf('job', job.id))).length,
    close: () => app.close(),
  };
}

/** The texts and choices that a page holds, as its fields were drawn; of two fields of one name, the first. */
export function standing(html: string): Record<string, string> {
  const { elements, faults } = readHtml(html);
  expect(faults).toEqual([]);
  const fields: Record<string, string> = {};
  for (const input of elements.filter(({ tagName }) => tagName === 'input')) {
    const [name = '', type] = [attributeOf(input, 'name'), attributeOf(input, 'type')];
    if (type === 'hidden' || (type === 'radio' && attributeOf(input, 'checked') === undefined)) continue;
    fields[name] ??= attributeOf(input, 'value') ?? '';
  }
  return fields;
}

/** Names of the fields that a page marks as wrong. */
export function markedWrong(html: string): readonly (string | undefined)[] {
  const wrong = readHtml(html).elements.filter((one) => attributeOf(one, 'aria-invalid') === 'true');
  return wrong.map((one) => attributeOf(one, 'name'));
}

/** A refusal says what is wrong, what was kept and what to do. */
export function expectWhole({ what, kept, next }: Problem): void {
  for (const sentence of [what, kept, next]) expect(sentence).toMatch(/\S+ .*[.!]$/);
}

/** Every sentence of a refusal stands on its page. */
export function expectToldOn(html: string, problem: Problem): void {
  expectWhole(problem);
  const text = textOf(html);
  for (const sentence of [problem.what, problem.kept, problem.next])
    expect(text).toContain(sentence.replaceAll(/\s+/g, ' '));
}
