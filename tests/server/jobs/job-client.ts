/** A whole stroke check done by a client that knows HTTP alone: as forms without any script, or as JSON. */
import type { ValveSheet } from '../../../procedures/valve-sheet/sheet.ts';
import { SIGNED_STEPS, strokeScript, textsAt, WAITED_STEPS } from '../../builders/stroke-script.ts';

export type Ask = 'form' | 'json';
export type Texts = Readonly<Record<string, string>>;

/** How a client reaches its server, already signed in. */
export interface Wire {
  post(path: string, fields: Texts, ask: Ask): Promise<Response>;
  /** As JSON. */
  get(path: string): Promise<Response>;
  newRequestId(): string;
}

/** What the client reads of a job. */
export interface Told {
  readonly step: string;
  readonly place: number;
  readonly status: string;
  readonly card: { readonly shownDigest: string | null; readonly nonce: string } | null;
}

export interface JobClientOptions {
  readonly wire: Wire;
  readonly ask: Ask;
  readonly sheet: ValveSheet;
  /** Who signs the holds. */
  readonly signer: { readonly id: string; readonly pin: string };
}

/** Statuses that confirm an act. */
const DONE: Readonly<Record<Ask, readonly number[]>> = { json: [200, 201], form: [303] };

const ACTS_MAX = 120;

export class JobClient {
  readonly #options: JobClientOptions;
  readonly #script: ReturnType<typeof strokeScript>;
  /** Rows of each table that were confirmed to this client. */
  readonly #rows = new Map<string, number>();

  constructor(options: JobClientOptions) {
    this.#options = options;
    this.#script = strokeScript(options.sheet);
  }

  /** @returns the job's number */
  async open(place: 'bench' | 'line', gear: Texts): Promise<string> {
    const { sheet, ask } = this.#options;
    const opened = await this.post('/jobs', { tag: sheet.tag, procedure: 'stroke-check', place, ...gear });
    if (ask === 'form') return opened.headers.get('location')?.split('/').at(-1) ?? '';
    return ((await opened.json()) as { readonly job: string }).job;
  }

  async job(id: string): Promise<Told> {
    const response = await this.#options.wire.get(`/jobs/${id}`);
    return (await response.json()) as Told;
  }

  /** What this client sends to the card that stands open, with a request id of its own. */
  actFor({ step, place, card }: Told): Texts {
    const { wire, signer } = this.#options;
    const requestId = wire.newRequestId();
    const fields = SIGNED_STEPS.includes(step)
      ? {
          act: 'sign',
          signer: signer.id,
          pin: signer.pin,
          shownDigest: card?.shownDigest ?? '',
          nonce: card?.nonce ?? '',
        }
      : { act: 'answer', ...textsAt(this.#script, { step, row: this.#rows.get(step) ?? 0 }) };
    return { requestId, ...fields, place: String(place), step };
  }

  /** An act of this step was confirmed. */
  confirmed(step: string): void {
    this.#rows.set(step, (this.#rows.get(step) ?? 0) + 1);
  }

  /** How long the card has people wait, in ms. */
  waitMs({ step }: Told): number {
    return (WAITED_STEPS[step] ?? 0) * 1000;
  }

  /** @throws Error with what was said where the server does not confirm it */
  async post(path: string, fields: Texts): Promise<Response> {
    const { wire, ask } = this.#options;
    const response = await wire.post(path, { requestId: wire.newRequestId(), ...fields }, ask);
    if (DONE[ask].includes(response.status)) return response;
    const said = (await response.text()).slice(0, 600);
    throw new Error(`${path}, ${fields.step ?? ''}: ${response.status} ${said}`);
  }

  /** From the card that is open to the end of the job. @param wait told how long the open card has people wait */
  async doAll(id: string, wait: (ms: number) => void | Promise<void>): Promise<void> {
    for (let acts = 0; acts < ACTS_MAX; acts += 1) {
      const told = await this.job(id);
      if (told.status === 'closed') return;
      await wait(this.waitMs(told));
      await this.post(`/jobs/${id}/acts`, this.actFor(told));
      this.confirmed(told.step);
    }
    throw new Error(`the job did not end within ${ACTS_MAX} acts`);
  }
}
