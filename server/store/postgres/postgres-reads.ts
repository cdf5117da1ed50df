import type { Json } from '../../../procedures/json.ts';
import { EMPTY_HEAD, EMPTY_STREAM } from '../../log/chain.ts';
import type { Answered, Head, Outside, StoredLine, StreamHead, Summary, SummaryPage } from '../store.ts';
import type { Ask } from './ask.ts';

const PAGE_ROWS = 500;
const LINE = 'seq, stream, place, hash, bytes';

type WithText<Row extends { readonly body: Json }> = Omit<Row, 'body'> & { readonly body: string };

/** The verbs of the store that only look. */
export class PostgresReads {
  readonly #ask: Ask;
  readonly #schema: string;

  /** @param ask on a pool, or in one transaction, which then sees one moment of the log */
  constructor(ask: Ask, schema: string) {
    this.#ask = ask;
    this.#schema = schema;
  }

  async head(): Promise<Head> {
    const text = `SELECT seq, hash FROM ${this.#schema}.log ORDER BY seq DESC LIMIT 1`;
    return (await this.#ask<Head>({ name: 'head', text }))[0] ?? EMPTY_HEAD;
  }

  async streamHead(stream: string): Promise<StreamHead> {
    const text = `SELECT place, hash FROM ${this.#schema}.log WHERE stream = $1 ORDER BY place DESC LIMIT 1`;
    return (await this.#ask<StreamHead>({ name: 'stream-head', text, values: [stream] }))[0] ?? EMPTY_STREAM;
  }

  async stream(stream: string): Promise<readonly StoredLine[]> {
    const text = `SELECT ${LINE} FROM ${this.#schema}.log WHERE stream = $1 ORDER BY place`;
    return await this.#ask<StoredLine>({ name: 'stream', text, values: [stream] });
  }

  async line(at: { readonly stream: string; readonly place: number }): Promise<StoredLine | undefined> {
    const text = `SELECT ${LINE} FROM ${this.#schema}.log WHERE stream = $1 AND place = $2`;
    return (await this.#ask<StoredLine>({ name: 'line', text, values: [at.stream, at.place] }))[0];
  }

  async *lines(fromSeq: number): AsyncIterable<StoredLine> {
    const text = `SELECT ${LINE} FROM ${this.#schema}.log WHERE seq >= $1 ORDER BY seq LIMIT ${PAGE_ROWS}`;
    for (let from = fromSeq; ; ) {
      const page = await this.#ask<StoredLine>({ name: 'lines', text, values: [from] });
      yield* page;
      const last = page.at(-1);
      if (last === undefined || page.length < PAGE_ROWS) return;
      from = last.seq + 1;
    }
  }

  /** A page at a time, from name to name by the index: DISTINCT would read every entry. */
  async *streams(): AsyncIterable<string> {
    const log = `${this.#schema}.log`;
    const text = `WITH RECURSIVE named AS (
        (SELECT stream FROM ${log} WHERE stream > $1 ORDER BY stream LIMIT 1)
        UNION ALL
        SELECT (SELECT stream FROM ${log} WHERE stream > named.stream ORDER BY stream LIMIT 1)
        FROM named WHERE named.stream IS NOT NULL
      ) SELECT stream FROM named WHERE stream IS NOT NULL LIMIT ${PAGE_ROWS}`;
    for (let after = ''; ; ) {
      const page = await this.#ask<{ stream: string }>({ name: 'streams', text, values: [after] });
      for (const { stream } of page) yield stream;
      const last = page.at(-1);
      if (last === undefined) return;
      after = last.stream;
    }
  }

  async blob(hash: string): Promise<Uint8Array | undefined> {
    const text = `SELECT bytes FROM ${this.#schema}.blob WHERE hash = $1`;
    const [row] = await this.#ask<{ bytes: Uint8Array }>({ name: 'blob', text, values: [hash] });
    return row && new Uint8Array(row.bytes);
  }

  async answered(requestId: string): Promise<Answered | undefined> {
    const text = `SELECT request_id AS "requestId", person, fingerprint, answer
      FROM ${this.#schema}.answered WHERE request_id = $1`;
    const [row] = await this.#ask<Omit<Answered, 'answer'> & { answer: string }>({
      name: 'answered',
      text,
      values: [requestId],
    });
    return row && { ...row, answer: JSON.parse(row.answer) };
  }

  async summaries(
    kind: string,
    { after, limit, order = 'up' }: SummaryPage = {},
  ): Promise<readonly Summary[]> {
    const [direction, beyond] = order === 'up' ? ['ASC', '>'] : ['DESC', '<'];
    const page = after === undefined ? '' : `AND (sort, id) ${beyond} ($3, $4)`;
    const text = `SELECT kind, id, sort, body FROM ${this.#schema}.summary WHERE kind = $1 ${page}
      ORDER BY sort ${direction}, id ${direction} LIMIT $2`;
    const values = [kind, limit ?? null, ...(after === undefined ? [] : [after.sort, after.id])];
    const name = `summaries ${order} ${after === undefined ? 'first' : 'after'}`;
    return (await this.#ask<WithText<Summary>>({ name, text, values })).map(withBody);
  }

  async summary(kind: string, id: string): Promise<Summary | undefined> {
    const text = `SELECT kind, id, sort, body FROM ${this.#schema}.summary WHERE kind = $1 AND id = $2`;
    const [row] = await this.#ask<WithText<Summary>>({ name: 'summary', text, values: [kind, id] });
    return row && withBody(row);
  }

  async outside(kind: string, id: string): Promise<Json | undefined> {
    const text = `SELECT kind, id, body FROM ${this.#schema}.outside WHERE kind = $1 AND id = $2`;
    const [row] = await this.#ask<WithText<Outside>>({ name: 'outside', text, values: [kind, id] });
    return row && withBody(row).body;
  }

  async outsideAll(kind: string): Promise<readonly Outside[]> {
    const text = `SELECT kind, id, body FROM ${this.#schema}.outside WHERE kind = $1 ORDER BY id`;
    return (await this.#ask<WithText<Outside>>({ name: 'outside-all', text, values: [kind] })).map(withBody);
  }
}

function withBody<Row extends { readonly body: string }>(row: Row): Omit<Row, 'body'> & { body: Json } {
  return { ...row, body: JSON.parse(row.body) };
}
