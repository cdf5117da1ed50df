/** A site with one valve, and somebody who practises on its bench as a program does. */
import { aSheet } from '../../builders/sheets.ts';
import { type AnApp, anApp, type Browser, newRequestId } from '../an-app.ts';
import { withValve } from '../jobs/site.ts';

export interface ToldOnBench {
  readonly step: string;
  readonly place: number;
  readonly status: string;
  readonly card: {
    readonly kind: string;
    readonly shownDigest: string | null;
    readonly nonce: string;
    readonly fields: readonly {
      readonly name: string;
      readonly type: string;
      readonly optional: boolean;
      readonly options: readonly { readonly value: string; readonly label: string }[];
    }[];
    readonly choices: readonly { readonly value: string }[];
  } | null;
  readonly bench: {
    readonly lines: readonly string[];
    readonly rows: readonly { readonly name: string; readonly text: string; readonly entry: string }[];
    readonly mayBeTold: boolean;
  } | null;
}

export type Given = Readonly<Record<string, string>>;

const asJson = { accept: 'application/json' };

export class BenchClient {
  readonly app: AnApp;
  readonly as: Browser;
  job = '';

  constructor(app: AnApp, as: Browser) {
    this.app = app;
    this.as = as;
  }

  async set(given: Given): Promise<Response> {
    const { app, as } = this;
    const response = await app.postJson(
      '/practice',
      { requestId: newRequestId(), tag: aSheet().tag, ...given },
      { as },
    );
    if (response.status === 201) this.job = ((await response.clone().json()) as { job: string }).job;
    return response;
  }

  async told(): Promise<ToldOnBench> {
    const { app, as, job } = this;
    const response = await app.get(`/practice/jobs/${job}`, { as, headers: asJson });
    return (await response.json()) as ToldOnBench;
  }

  async act(given: Given): Promise<ToldOnBench> {
    const { app, as, job } = this;
    const { place, step } = await this.told();
    app.wait(60_000);
    const act = { requestId: newRequestId(), act: 'answer', place: String(place), step, ...given };
    const response = await app.postJson(`/practice/jobs/${job}/acts`, act, { as });
    if (response.status >= 300) throw new Error(`${step}: ${(await response.text()).slice(0, 800)}`);
    return this.told();
  }

  /** Enters what the bench shows, as it stands there; the first choice where it says nothing. */
  async asShown(): Promise<ToldOnBench> {
    const told = await this.told();
    const { card, bench } = told;
    if (card === null) return told;
    if (card.kind === 'hold') return await this.sign(told);
    if (card.kind === 'question') return await this.act({ choice: card.choices[0]?.value ?? '' });
    const shown = Object.fromEntries((bench?.rows ?? []).map(({ name, entry }) => [name, entry]));
    const found = wordOf(told);
    return await this.act(found === '' ? shown : { found });
  }

  async sign({ place, step, card }: ToldOnBench): Promise<ToldOnBench> {
    const { app, as, job } = this;
    const fields = {
      requestId: newRequestId(),
      place: String(place),
      step,
      shownDigest: card?.shownDigest ?? '',
      nonce: card?.nonce ?? '',
    };
    const response = await app.postJson(`/practice/jobs/${job}/sign`, fields, { as });
    if (response.status >= 300) throw new Error(`${step}: ${(await response.text()).slice(0, 800)}`);
    return await this.told();
  }

  async result(): Promise<Response> {
    const { app, as, job } = this;
    return await app.get(`/practice/jobs/${job}/result`, { as, headers: asJson });
  }
}

/** The option that the bench says is found. */
function wordOf({ card, bench }: ToldOnBench): string {
  const line = bench?.lines.find((one) => one.startsWith('You find: ')) ?? '';
  const options = card?.fields.find(({ name }) => name === 'found')?.options ?? [];
  const fits = options.find(({ label }) => line === `You find: ${label}.`);
  if (fits !== undefined) return fits.value;
  return bench?.lines.some((one) => one.includes('nothing can be told')) ? 'cannot tell' : '';
}

export async function aBench(): Promise<AnApp> {
  const app = await anApp({ people: true });
  await withValve(app, aSheet());
  return app;
}
