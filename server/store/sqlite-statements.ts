import type { DatabaseSyncInstance } from '@photostructure/sqlite';
import type { Answered, Head, StoredLine, StreamHead } from './store.ts';

type Value = string | number | null | Uint8Array;

/** A prepared statement whose rows have a known form: the tables are STRICT, so SQLite keeps to it. */
interface Query<Row, Parameters extends readonly Value[]> {
  get(...parameters: Parameters): Row | undefined;
  all(...parameters: Parameters): Row[];
  run(...parameters: Parameters): unknown;
}

interface SummaryRow {
  readonly kind: string;
  readonly id: string;
  readonly sort: string;
  readonly body: string;
}

type OutsideRow = Omit<SummaryRow, 'sort'>;
type AnsweredRow = Omit<Answered, 'answer'> & { readonly answer: string };

export type Statements = ReturnType<typeof prepareStatements>;

/** Every statement of the running server, prepared once: preparing costs more than running. */
export function prepareStatements(
  database: DatabaseSyncInstance,
  { hasBlobs }: { readonly hasBlobs: boolean },
) {
  const sql = <Row, Parameters extends readonly Value[]>(text: string): Query<Row, Parameters> =>
    database.prepare(text);
  const summariesBy = (order: { direction: 'ASC' | 'DESC'; beyond: '>' | '<' }) => {
    const select = 'SELECT kind, id, sort, body FROM summary WHERE kind = ?';
    const sorted = `ORDER BY sort ${order.direction}, id ${order.direction} LIMIT ?`;
    return {
      first: sql<SummaryRow, [string, number]>(`${select} ${sorted}`),
      after: sql<SummaryRow, [string, string, string, number]>(
        `${select} AND (sort, id) ${order.beyond} (?, ?) ${sorted}`,
      ),
    };
  };
  const line = 'SELECT seq, stream, place, hash, bytes FROM log';
  return {
    head: sql<Head, []>('SELECT seq, hash FROM log ORDER BY seq DESC LIMIT 1'),
    streamHead: sql<StreamHead, [string]>(
      'SELECT place, hash FROM log WHERE stream = ? ORDER BY place DESC LIMIT 1',
    ),
    append: sql<never, [number, string, number, string, string]>(
      'INSERT INTO log (seq, stream, place, hash, bytes) VALUES (?, ?, ?, ?, ?)',
    ),
    stream: sql<StoredLine, [string]>(`${line} WHERE stream = ? ORDER BY place`),
    line: sql<StoredLine, [string, number]>(`${line} WHERE stream = ? AND place = ?`),
    lines: sql<StoredLine, [number, number]>(`${line} WHERE seq >= ? ORDER BY seq LIMIT ?`),
    firstStream: sql<{ stream: string }, []>('SELECT stream FROM log ORDER BY stream LIMIT 1'),
    nextStream: sql<{ stream: string }, [string]>(
      'SELECT stream FROM log WHERE stream > ? ORDER BY stream LIMIT 1',
    ),
    ...(hasBlobs ? blobStatements(database) : {}),
    answer: sql<never, [string, string | null, string, string]>(
      'INSERT INTO answered (request_id, person, fingerprint, answer) VALUES (?, ?, ?, ?)',
    ),
    answered: sql<AnsweredRow, [string]>(
      'SELECT request_id AS requestId, person, fingerprint, answer FROM answered WHERE request_id = ?',
    ),
    summaries: {
      up: summariesBy({ direction: 'ASC', beyond: '>' }),
      down: summariesBy({ direction: 'DESC', beyond: '<' }),
    },
    summary: sql<SummaryRow, [string, string]>(
      'SELECT kind, id, sort, body FROM summary WHERE kind = ? AND id = ?',
    ),
    putSummary: sql<never, [string, string, string, string]>(
      `INSERT INTO summary (kind, id, sort, body) VALUES (?, ?, ?, ?)
       ON CONFLICT (kind, id) DO UPDATE SET sort = excluded.sort, body = excluded.body`,
    ),
    deleteSummary: sql<never, [string, string]>('DELETE FROM summary WHERE kind = ? AND id = ?'),
    clearSummaries: sql<never, []>('DELETE FROM summary'),
    putNext: sql<never, [string, string, string, string]>(
      'INSERT INTO summary_next (kind, id, sort, body) VALUES (?, ?, ?, ?)',
    ),
    takeNext: sql<never, []>(
      'INSERT INTO summary (kind, id, sort, body) SELECT kind, id, sort, body FROM summary_next',
    ),
    clearNext: sql<never, []>('DELETE FROM summary_next'),
    outside: sql<OutsideRow, [string, string]>(
      'SELECT kind, id, body FROM outside WHERE kind = ? AND id = ?',
    ),
    outsideAll: sql<OutsideRow, [string]>('SELECT kind, id, body FROM outside WHERE kind = ? ORDER BY id'),
    putOutside: sql<never, [string, string, string]>(
      `INSERT INTO outside (kind, id, body) VALUES (?, ?, ?)
       ON CONFLICT (kind, id) DO UPDATE SET body = excluded.body`,
    ),
    deleteOutside: sql<never, [string, string]>('DELETE FROM outside WHERE kind = ? AND id = ?'),
  };
}

interface BlobStatements {
  readonly putBlob?: Query<unknown, [string, Uint8Array]>;
  readonly blob?: Query<{ readonly bytes: Uint8Array }, [string]>;
}

function blobStatements(database: DatabaseSyncInstance): BlobStatements {
  return {
    putBlob: database.prepare('INSERT INTO blob (hash, bytes) VALUES (?, ?)'),
    blob: database.prepare('SELECT bytes FROM blob WHERE hash = ?'),
  };
}
