import type { Page } from 'playwright-core';
import { jobKind } from '../../../server/jobs/job-stream.ts';
import { strokeScript, textsAt, WAITED_STEPS } from '../../builders/stroke-script.ts';
import type { TestServer } from './server.ts';

export interface ByJson {
  /** Whose screen it is: the answer goes with the cookies of this page, which itself stays as it is. */
  readonly page: Page;
  readonly server: TestServer;
  readonly id: string;
}

/** Answers the open card of a stroke check as the script says, over JSON. @throws Error if it is refused */
export async function answerByJson({ page, server, id }: ByJson): Promise<void> {
  const job = await server.services.log.state(jobKind, id);
  server.wait((WAITED_STEPS[job.step] ?? 5) * 1000);
  const row = (job.tables[job.step] ?? []).length;
  const answer = await page.request.post(`/jobs/${id}/acts`, {
    headers: { origin: server.origin, accept: 'application/json' },
    data: {
      act: 'answer',
      place: String(job.place),
      step: job.step,
      ...textsAt(strokeScript(job.sheet), { step: job.step, row }),
    },
  });
  if (!answer.ok()) throw new Error(`${job.step}: ${await answer.text()}`);
}
