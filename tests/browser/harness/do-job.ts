import type { Page } from 'playwright-core';
import type { Job } from '../../../procedures/job.ts';
import { procedureNamed } from '../../../procedures/served.ts';
import { GEAR_IN_PSI } from '../../../server/demo/earlier-jobs.ts';
import { jobKind } from '../../../server/jobs/job-stream.ts';
import type { DemoPerson } from '../../../server/pages/set-up.ts';
import { answersFor, type Overrides } from '../../builders/answers.ts';
import {
  SIGNED_STEPS,
  strokeScript,
  type Texts,
  textsAt,
  WAITED_STEPS,
} from '../../builders/stroke-script.ts';
import { answerByJson } from './answer-by-json.ts';
import { answerByKeys, pressByKeys, selectByKeys } from './by-keys.ts';
import { nextTap } from './next-tap.ts';
import type { TestServer } from './server.ts';

export interface DoJob {
  readonly page: Page;
  readonly server: TestServer;
  readonly tag: string;
  readonly place: 'bench' | 'line';
  readonly supervisor: DemoPerson;
  /** By the keyboard alone, from the sign-in on; by clicking without it. */
  readonly byKeys?: boolean;
  /** On a page that runs no script. */
  readonly plain?: boolean;
  /** Further rows of a table of readings, each the same card again, go over JSON; without it all are clicked. */
  readonly rowsClicked?: number;
  /** Called with each card as it stands open. */
  at?(step: string, row: number): Promise<void>;
}

/** Opens a stroke check from the pages and does it by clicking, to its end. @returns the job's number */
export async function doStrokeCheck(job: DoJob): Promise<string> {
  const id = await openByClicking(job);
  let isBehind = false;
  for (let cards = 0; cards < 120; cards += 1) {
    const state = await job.server.services.log.state(jobKind, id);
    const row = (state.tables[state.step] ?? []).length;
    if (row >= (job.rowsClicked ?? Number.POSITIVE_INFINITY)) {
      await answerByJson({ page: job.page, server: job.server, id });
      isBehind = true;
      continue;
    }
    if (isBehind) await job.page.reload();
    isBehind = false;
    await job.at?.(state.status === 'closed' ? 'closed' : state.step, row);
    if (state.status === 'closed') return id;
    job.server.wait((WAITED_STEPS[state.step] ?? 5) * 1000);
    await answerCard(job, { state, texts: textsAt(strokeScript(state.sheet), { step: state.step, row }) });
  }
  throw new Error('The job did not end within 120 cards.');
}

export interface AnyJob extends DoJob {
  readonly procedure: string;
  /** What is typed otherwise than the plainest answer, by step. */
  readonly overrides: Overrides;
  readonly gear?: Readonly<Record<string, string>>;
}

/** Opens a job of any procedure from the pages and does it by clicking, each card from its fields. @returns the job's number */
export async function doJob(job: AnyJob): Promise<string> {
  const steps = procedureNamed(job.procedure)?.definition.steps;
  const id = await openByClicking(job);
  for (let cards = 0; cards < 120; cards += 1) {
    const state = await job.server.services.log.state(jobKind, id);
    await job.at?.(state.status === 'closed' ? 'closed' : state.step, cards);
    if (state.status === 'closed') return id;
    const step = steps?.[state.step];
    if (step === undefined) throw new Error(`${job.procedure} has no step ${state.step}`);
    job.server.wait(step.kind === 'wait' ? step.waitS * 1000 : 5000);
    const texts = step.kind === 'hold' ? {} : answersFor(state, { step, overrides: job.overrides });
    await answerCard(job, { state, texts, signs: step.kind === 'hold' });
  }
  throw new Error('The job did not end within 120 cards.');
}

export async function openByClicking({
  page,
  tag,
  place,
  byKeys,
  procedure = 'stroke-check',
  gear = GEAR_IN_PSI,
}: Omit<DoJob, 'at'> & Partial<Pick<AnyJob, 'procedure' | 'gear'>>): Promise<string> {
  await page.goto(`/jobs/new?tag=${tag}&procedure=${procedure}&place=${place}`);
  for (const [role, number] of Object.entries(gear)) {
    const select = page.locator(`select[name=${role}]`);
    if ((await select.count()) === 0) continue;
    if (byKeys) await selectByKeys(page, `select[name=${role}]`, number);
    else await select.selectOption(number);
  }
  if (byKeys) await pressByKeys(page, 'main form .button--main');
  else await page.getByRole('button', { name: 'Open the job' }).click();
  await page.waitForURL(/\/jobs\/\d+/);
  return /\/jobs\/(\d+)/.exec(page.url())?.[1] ?? '';
}

async function answerCard(
  { page, supervisor, byKeys, plain }: DoJob,
  {
    state,
    texts,
    signs = SIGNED_STEPS.includes(state.step),
  }: { readonly state: Job; readonly texts: Texts; readonly signs?: boolean },
): Promise<void> {
  if (byKeys) {
    await nextTap(page);
    await answerByKeys(page, { isSigned: signs, supervisor, texts });
  } else if (signs) {
    await page.locator('select[name=signer]').selectOption(supervisor.id);
    await page.locator('.signature input[name=pin]').fill(supervisor.pin);
    if (!plain) await nextTap(page);
    await page.locator('.button--sign').click();
  } else {
    for (const [name, text] of Object.entries(texts)) await give(page, { name, text });
    if (!plain) await nextTap(page);
    await page.locator('#card form .button--main').first().click();
  }
  // Without script nothing can be asked of the page: a click is followed by its answer.
  const seen = (place: number) => {
    const field = document.querySelector<HTMLInputElement>('#work input[name=place]');
    return field === null || Number(field.value) > place;
  };
  await page.waitForFunction(seen, state.place, { timeout: 30_000, polling: 50 }).catch(async () => {
    const said = await page.locator('.refusal, .said').allTextContents();
    throw new Error(`${state.step} was not answered: ${said.join(' ') || 'nothing was said'}`);
  });
}

async function give(
  page: Page,
  { name, text }: { readonly name: string; readonly text: string },
): Promise<void> {
  const field = page.locator(`#card [name="${name}"]`);
  if ((await field.first().getAttribute('type')) === 'radio') {
    const radio = page.locator(`#card [name="${name}"][value="${text}"]`);
    // Brought to the middle: at the edge it lies under the line that one writes in.
    await radio.evaluate((one) => one.scrollIntoView({ block: 'center' }));
    await radio.check({ force: true });
  } else await field.first().fill(text);
}
