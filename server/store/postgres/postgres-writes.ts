/** What one transaction writes: photos one by one, all else as one statement, so that one answer is waited for. */
import { canonical } from '../../log/canonical.ts';
import type { Answered, Batch, SealedEntry, Summary } from '../store.ts';
import type { Ask, Question } from './ask.ts';

/** @throws TypeError for what is no JSON, before anything was written */
export function statementsOf(batch: Batch, schema: string): readonly Question[] {
  const { entries, summaries, withdrawn, answers, blobs = [] } = batch;
  return [
    ...blobs.map(({ hash, bytes }) => ({
      name: 'put-blob',
      text: `INSERT INTO ${schema}.blob (hash, bytes) VALUES ($1, $2) ON CONFLICT (hash) DO NOTHING`,
      values: [hash, Buffer.from(bytes)],
    })),
    {
      name: 'write',
      // A line of a list is put or withdrawn, never both: one statement may not touch a row twice.
      text: `WITH appended AS (
          INSERT INTO ${schema}.log (seq, stream, place, hash, bytes)
          SELECT * FROM unnest($1::bigint[], $2::text[], $3::bigint[], $4::text[], $5::text[])
        ), put AS (
          ${puttingSummaries(schema, 6)}
        ), withdrawn AS (
          DELETE FROM ${schema}.summary USING unnest($10::text[], $11::text[]) AS gone (kind, id)
          WHERE summary.kind = gone.kind AND summary.id = gone.id
        )
        INSERT INTO ${schema}.answered (request_id, person, fingerprint, answer)
        SELECT * FROM unnest($12::text[], $13::text[], $14::text[], $15::text[])`,
      values: [
        ...columns(entries, { count: 5, of: entryRow }),
        ...columns(summaries, { count: 4, of: summaryRow }),
        ...columns(withdrawn, { count: 2, of: ({ kind, id }) => [kind, id] }),
        ...columns(answers, { count: 4, of: answerRow }),
      ],
    },
  ];
}

/** @param summaries each line once */
export function putSummaries(summaries: readonly Summary[], schema: string): Question {
  return {
    name: 'put-summaries',
    text: puttingSummaries(schema, 1),
    values: columns(summaries, { count: 4, of: summaryRow }),
  };
}

export async function askAll(ask: Ask, questions: readonly Question[]): Promise<void> {
  for (const question of questions) await ask(question);
}

/** @param first number of the first of its four values */
function puttingSummaries(schema: string, first: number): string {
  const lists = [0, 1, 2, 3].map((index) => `$${first + index}::text[]`).join(', ');
  return `INSERT INTO ${schema}.summary (kind, id, sort, body) SELECT * FROM unnest(${lists})
    ON CONFLICT (kind, id) DO UPDATE SET sort = excluded.sort, body = excluded.body`;
}

function entryRow({ entry, bytes }: SealedEntry): readonly unknown[] {
  return [entry.seq, entry.stream, entry.place, entry.hash, bytes];
}

function answerRow({ requestId, person, fingerprint, answer }: Answered): readonly unknown[] {
  return [requestId, person, fingerprint, canonical(answer)];
}

function summaryRow({ kind, id, sort, body }: Summary): readonly string[] {
  return [kind, id, sort, canonical(body)];
}

/** Rows turned into one list for each column. */
function columns<Row>(
  rows: readonly Row[],
  { count, of }: { readonly count: number; of(row: Row): readonly unknown[] },
): readonly (readonly unknown[])[] {
  const all = rows.map(of);
  return Array.from({ length: count }, (_, column) => all.map((row) => row[column]));
}
