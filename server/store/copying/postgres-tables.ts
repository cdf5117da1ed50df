import type { Ask } from '../postgres/ask.ts';
import { pageStatement, type Row, type TableSource, type TableTarget } from './tables.ts';

/** @param ask in a transaction that sees one moment of the database */
export function postgresSource(ask: Ask, schema: string): TableSource {
  return {
    page: async (table, last) => {
      const text = pageStatement(table, {
        from: `${schema}.${table.name}`,
        isFirst: last === undefined,
        mark: (number) => `$${number}`,
      });
      const rows = await ask<Readonly<Record<string, Row[number]>>>({
        text,
        values: (last ?? []).slice(0, table.keys),
      });
      return rows.map((row) => table.columns.map((column) => row[column] ?? null));
    },
  };
}

/** @param ask in a transaction that whoever began it commits */
export function postgresTarget(ask: Ask, schema: string): TableTarget {
  return {
    isEmpty: async ({ name }) =>
      (await ask({ text: `SELECT 1 FROM ${schema}.${name} LIMIT 1` })).length === 0,
    add: async ({ name, columns, types }, rows) => {
      const lists = types.map((type, index) => `$${index + 1}::${type}[]`).join(', ');
      const text = `INSERT INTO ${schema}.${name} (${columns.join(', ')}) SELECT * FROM unnest(${lists})`;
      await ask({ text, values: columns.map((_, column) => rows.map((row) => row[column])) });
    },
  };
}
