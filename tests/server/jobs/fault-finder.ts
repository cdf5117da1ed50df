/** Somebody who looks for a fault over HTTP as a program does: checks by name, and the ways between as the cards ask. */
import type { Job } from '../../../procedures/job.ts';
import { procedureNamed } from '../../../procedures/served.ts';
import { findTheFault } from '../../../procedures/troubleshooting/find-the-fault.ts';
import { jobKind } from '../../../server/jobs/job-stream.ts';
import type { Person } from '../../../server/people/person.ts';
import { answersFor, type Overrides } from '../../builders/answers.ts';
import { readHtml, textOf } from '../../views/html.ts';
import { type AnApp, type Browser, newRequestId, PINS } from '../an-app.ts';
import { gearNumbers } from './site.ts';

export type Given = Readonly<Record<string, string>>;

export interface Answered {
  readonly status: number;
  readonly body: { readonly code?: string; readonly what?: string; readonly fields?: Given };
}

const ACTS_MAX = 60;

export class FaultFinder {
  readonly #app: AnApp;
  readonly #as: Browser;
  readonly #signer: Person;
  id = '';

  constructor(app: AnApp, by: { readonly as: Browser; readonly signer: Person }) {
    this.#app = app;
    this.#as = by.as;
    this.#signer = by.signer;
  }

  /** Opens a job on the valve; one that goes on from this one says so in `more`. */
  async open(tag: string, more: Given = {}): Promise<void> {
    const opened = { tag, procedure: findTheFault.id, place: 'line', ...gearNumbers('line'), ...more };
    const { status, body } = await this.#post('/jobs', opened);
    if (status !== 201) throw new Error(`opening: ${JSON.stringify(body)}`);
    this.id = (body as { job?: string }).job ?? '';
  }

  job(): Promise<Job> {
    return this.#app.services.log.state(jobKind, this.id);
  }

  /** Sends an answer to the open card, whatever becomes of it. */
  async send(given: Given): Promise<Answered> {
    const { place, step } = await this.job();
    return this.#post(`/jobs/${this.id}/acts`, { act: 'answer', place: String(place), step, ...given });
  }

  /** @returns the step that stands open then @throws Error where it is refused */
  async answer(given: Given): Promise<string> {
    const { step } = await this.job();
    const { status, body } = await this.send(given);
    if (status >= 300) throw new Error(`${step}: ${JSON.stringify(body)}`);
    return (await this.job()).step;
  }

  /** From the complaint to the first hub. */
  async toHub(complaint: Given): Promise<void> {
    await this.through('inService', { complaint });
  }

  /** Chooses a check at the open hub, and answers it. */
  async check(id: string, given: Given): Promise<string> {
    await this.answer({ hubChoice: id });
    return this.answer(given);
  }

  /** Answers card after card until a step stands open; holds are signed. */
  async through(to: string, overrides: Overrides = {}): Promise<void> {
    for (let acts = 0; acts < ACTS_MAX; acts += 1) {
      const job = await this.job();
      if (job.step === to) return;
      const step = procedureNamed(job.procedure)?.definition.steps[job.step];
      if (step === undefined || step.kind === 'end') throw new Error(`it ended at ${job.step}`);
      if (step.kind === 'wait') this.#app.wait(step.waitS * 1000);
      if (step.kind === 'hold') await this.#sign(job);
      else await this.answer(answersFor(job, { step, overrides }));
    }
    throw new Error(`it never came to ${to}, and stands at ${(await this.job()).step}`);
  }

  async reply(text: string): Promise<Answered & { readonly kind: string }> {
    const { place } = await this.job();
    const answered = await this.#post(`/jobs/${this.id}/reply`, { place: String(place), reply: text });
    return { ...answered, kind: String((answered.body as { kind?: string }).kind) };
  }

  /** What the page of the job says; a page that is not sound is an error. */
  async text(path = `/jobs/${this.id}`): Promise<string> {
    const response = await this.#app.get(path, { as: this.#as });
    const { faults, elements } = readHtml(await response.text());
    if (response.status !== 200 || faults.length > 0)
      throw new Error(`${path}: ${response.status} ${faults.join('; ')}`);
    return elements.map((element) => textOf(element)).join(' ');
  }

  async #sign(job: Job): Promise<void> {
    const told = await this.#app.get(`/jobs/${this.id}`, {
      as: this.#as,
      headers: { accept: 'application/json' },
    });
    const { card } = (await told.json()) as { card: { shownDigest: string; nonce: string } };
    const { status, body } = await this.#post(`/jobs/${this.id}/acts`, {
      act: 'sign',
      place: String(job.place),
      step: job.step,
      signer: this.#signer.id,
      pin: PINS.supervisor,
      shownDigest: card.shownDigest,
      nonce: card.nonce,
    });
    if (status >= 300) throw new Error(`${job.step}: ${JSON.stringify(body)}`);
  }

  async #post(path: string, fields: Given): Promise<Answered> {
    this.#app.wait(20_000);
    const response = await this.#app.postJson(
      path,
      { requestId: newRequestId(), ...fields },
      { as: this.#as },
    );
    return { status: response.status, body: (await response.json()) as Answered['body'] };
  }
}
