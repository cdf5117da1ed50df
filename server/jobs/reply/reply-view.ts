import { z } from 'zod';
import { calculationOf } from '../../../procedures/calculations/registry.ts';
import type { Job } from '../../../procedures/job.ts';
import type { Given } from '../../../procedures/readings/given.ts';
import type { Reply, ReplyAct } from '../../../procedures/reply/reply.ts';
import { pathOfCalculation } from '../../calculations/view.ts';

const cell = z.object({ label: z.string(), value: z.string() });

/** What a reply was understood as: the same for the page, for the piece that htmx swaps, and as JSON. */
export const replyAnswer = z.object({
  kind: z.enum(['understood', 'partial', 'ambiguous', 'told', 'unknown']),
  /** As it was typed. */
  typed: z.string(),
  /** In one line that can be typed again; blank where nothing was understood. */
  said: z.string(),
  what: z.string(),
  lines: z.array(z.string()),
  rows: z.array(z.array(cell)),
  missing: z.array(z.string()),
  choices: z.array(z.object({ text: z.string(), reply: z.string() })),
  source: z.string(),
  calculation: z.object({ title: z.string(), address: z.string() }).nullable(),
  /** The ordinary act that counts it: sent as it stands, with a request id. Null where there is nothing to count. */
  send: z
    .object({
      address: z.string(),
      text: z.string(),
      fields: z.record(z.string(), z.union([z.string(), z.array(z.string())])),
    })
    .nullable(),
});

export type ReplyView = z.output<typeof replyAnswer>;

/** @example replyView(reply, { job, typed: '9 psi 50 %' }).send?.address // '/jobs/12/acts' */
export function replyView(
  reply: Reply,
  { job, typed }: { readonly job: Job; readonly typed: string },
): ReplyView {
  const blank: ReplyView = {
    kind: reply.kind,
    typed,
    said: '',
    what: '',
    lines: [],
    rows: [],
    missing: [],
    choices: [],
    source: '',
    calculation: null,
    send: null,
  };
  switch (reply.kind) {
    case 'understood': {
      const rows = reply.rows.map((row) => row.map((one) => ({ ...one })));
      return { ...blank, said: reply.said, lines: [...reply.notes], rows, send: sendOf(reply.act, job) };
    }
    case 'partial':
      return {
        ...blank,
        said: reply.said,
        rows: [reply.cells.map((one) => ({ ...one }))],
        missing: [...reply.missing],
      };
    case 'ambiguous':
      return { ...blank, what: reply.what, choices: reply.choices.map((one) => ({ ...one })) };
    case 'told':
      return {
        ...blank,
        what: reply.heading,
        lines: [...reply.lines],
        choices: reply.choices.map((one) => ({ ...one })),
        source: reply.source,
        calculation: calculationLink(reply.calculation, job.tag),
      };
    case 'unknown':
      return { ...blank, what: reply.what, lines: [reply.next] };
  }
}

function calculationLink(id: string, tag: string): ReplyView['calculation'] {
  if (id === '') return null;
  const address = `${pathOfCalculation(id)}?${new URLSearchParams({ valve: tag })}`;
  return { title: calculationOf(id).title, address };
}

/** The form that counts it, with the very fields that the card's own form would send. */
function sendOf(act: ReplyAct, job: Job): ReplyView['send'] {
  const place = String(job.place);
  const address = `/jobs/${job.id}/acts`;
  switch (act.act) {
    case 'answer':
      return answerForm(act.givens, job);
    case 'prove-again':
      return { address, text: 'Count it', fields: { ...act.given, place, act: act.act } };
    case 'go-back':
      return { address, text: 'Go back there', fields: { place, act: act.act, to: act.to } };
    case 'make-safe':
      return { address, text: 'Make safe and stop', fields: { place, act: act.act } };
    case 'park':
      return { address, text: `Park job ${job.id}`, fields: { place, act: act.act } };
  }
}

function answerForm(givens: readonly Given[], job: Job): ReplyView['send'] {
  const [given = {}, ...more] = givens;
  const own = { place: String(job.place), step: job.step };
  if (more.length === 0)
    return { address: `/jobs/${job.id}/acts`, text: 'Count it', fields: { ...given, ...own, act: 'answer' } };
  const column = (name: string) => givens.map((one) => one[name] ?? '');
  return {
    address: `/jobs/${job.id}/together`,
    text: `Count ${givens.length} rows`,
    fields: {
      place: own.place,
      steps: givens.map(() => job.step),
      signalPa: column('signalPa'),
      signalPaGauge: column('signalPaGauge'),
      travelM: column('travelM'),
      travelMGauge: column('travelMGauge'),
    },
  };
}
