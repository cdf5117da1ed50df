/** What one transaction writes. Each is one statement, however many rows it has. */
import { canonical } from '../../log/canonical.ts';
import type { Batch, Summary } from '../store.ts';
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
    ...whereAny(entries, {
      name: 'append',
      text: `INSERT INTO ${schema}.log (seq, stream, place, hash, bytes)
        SELECT * FROM unnest($1::bigint[], $2::text[], $3::bigint[], $4::text[], $5::text[])`,
      values: columns(entries, ({ entry, bytes }) => [
        entry.seq,
        entry.stream,
        entry.place,
        entry.hash,
        bytes,
      ]),
    }),
    ...putSummaries(summaries, schema),
    ...whereAny(withdrawn, {
      name: 'withdraw',
      text: `DELETE FROM ${schema}.summary USING unnest($1::text[], $2::text[]) AS gone (kind, id)
        WHERE summary.kind = gone.kind AND summary.id = gone.id`,
      values: columns(withdrawn, ({ kind, id }) => [kind, id]),
    }),
    ...whereAny(answers, {
      name: 'answer',
      text: `INSERT INTO ${schema}.answered (request_id, person, fingerprint, answer)
        SELECT * FROM unnest($1::text[], $2::text[], $3::text[], $4::text[])`,
      values: columns(answers, (one) => [one.requestId, one.person, one.fingerprint, canonical(one.answer)]),
    }),
  ];
}

/** @param summaries each line once */
export function putSummaries(summaries: readonly Summary[], schema: string): readonly Question[] {
  return whereAny(summaries, {
    name: 'put-summaries',
    text: `INSERT INTO ${schema}.summary (kind, id, sort, body)
      SELECT * FROM unnest($1::text[], $2::text[], $3::text[], $4::text[])
      ON CONFLICT (kind, id) DO UPDATE SET sort = excluded.sort, body = excluded.body`,
    values: columns(summaries, ({ kind, id, sort, body }) => [kind, id, sort, canonical(body)]),
  });
}

export async function askAll(ask: Ask, questions: readonly Question[]): Promise<void> {
  for (const question of questions) await ask(question);
}

function whereAny(rows: readonly unknown[], question: Question): readonly Question[] {
  return rows.length === 0 ? [] : [question];
}

/** Rows turned into one list for each column. */
function columns<Row>(rows: readonly Row[], of: (row: Row) => readonly unknown[]): readonly unknown[][] {
  const all = rows.map(of);
  return (all[0] ?? []).map((_, column) => all.map((row) => row[column]));
}
