import type { DatabaseSyncInstance } from '@photostructure/sqlite';
import { readableForm, WITH_BLOBS } from '../migrations/migrate.ts';
import { pageStatement, type Row, type TableSource, type TableTarget } from './tables.ts';

/** @param database open for as long as it is read; one read transaction sees one moment of it */
export function sqliteSource(database: DatabaseSyncInstance): TableSource {
  database.exec('BEGIN');
  const hasBlobs = readableForm(database) >= WITH_BLOBS;
  return {
    page: async (table, last) => {
      if (table.name === 'blob' && !hasBlobs) return [];
      const sql = pageStatement(table, { from: table.name, isFirst: last === undefined, mark: () => '?' });
      const rows = database.prepare(sql).all(...(last ?? []).slice(0, table.keys));
      return rows.map((row: Readonly<Record<string, Row[number]>>) =>
        table.columns.map((column) => row[column] ?? null),
      );
    },
  };
}

/** @param database in a transaction that whoever opened it commits */
export function sqliteTarget(database: DatabaseSyncInstance): TableTarget {
  return {
    isEmpty: async ({ name }) =>
      database.prepare(`SELECT 1 AS found FROM ${name} LIMIT 1`).get() === undefined,
    add: async ({ name, columns }, rows) => {
      const marks = columns.map(() => '?').join(', ');
      const insert = database.prepare(`INSERT INTO ${name} (${columns.join(', ')}) VALUES (${marks})`);
      for (const row of rows) insert.run(...row);
    },
  };
}
