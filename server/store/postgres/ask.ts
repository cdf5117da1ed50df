import type { QueryResult } from 'pg';

export interface Question {
  readonly text: string;
  readonly values?: readonly unknown[];
  /** Prepared once on each connection under this name. */
  readonly name?: string;
}

/** Puts one statement to the database; the caller knows the form of its rows. */
export type Ask = <Row extends object = object>(question: Question) => Promise<readonly Row[]>;

interface Asked {
  query(config: { text: string; values?: unknown[]; name?: string }): Promise<QueryResult>;
}

/** Asks on this one connection, or on any of a pool. */
export function askOn(connection: Asked): Ask {
  return async ({ text, values, name }) => {
    const asked = { text, ...(values && { values: [...values] }), ...(name !== undefined && { name }) };
    return (await connection.query(asked)).rows;
  };
}
