/** Changes a log behind the program's back, as somebody with the database file in hand could. */
import { join } from 'node:path';
import { DatabaseSync } from '@photostructure/sqlite';

export interface Tamper {
  /** Runs SQL against the database, with the triggers that guard the log taken away first. */
  sql(text: string, ...parameters: (string | number)[]): void;
  /** The stored text of an entry. */
  bytesOf(seq: number): string;
}

export function tamper(folder: string, change: (tamper: Tamper) => void): void {
  const database = new DatabaseSync(join(folder, 'yokeside.sqlite'));
  try {
    const triggers: { name: string }[] = database
      .prepare(`SELECT name FROM sqlite_schema WHERE type = 'trigger'`)
      .all();
    for (const { name } of triggers) database.exec(`DROP TRIGGER ${name}`);
    change({
      sql: (text, ...parameters) => void database.prepare(text).run(...parameters),
      bytesOf: (seq) => database.prepare('SELECT bytes FROM log WHERE seq = ?').get(seq).bytes,
    });
  } finally {
    database.close();
  }
}
