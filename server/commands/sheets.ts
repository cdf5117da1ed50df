/**
 * `npm run sheets`: prints every procedure as a sheet for review and writes down the hash of its newest revision.
 * A revision that has a hash keeps it: a procedure that was changed needs a new letter first. Run from the project.
 */
import { createHash } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { PROCEDURES } from '../../procedures/served.ts';
import type { ServedProcedure } from '../../procedures/served-procedure.ts';
import { printSheet } from '../../procedures/sheet-print.ts';
import { asJson, revisionOf } from '../../procedures/vocabulary.ts';
import { canonical } from '../log/canonical.ts';

function writeSheet({ definition, folder: of }: ServedProcedure): void {
  const folder = join(process.cwd(), 'procedures', of);
  const path = join(folder, `${definition.id}.revisions.json`);
  const letter = revisionOf(definition);
  const hash = createHash('sha256')
    .update(canonical(asJson(definition)), 'utf8')
    .digest('hex');
  const known = existsSync(path)
    ? (JSON.parse(readFileSync(path, 'utf8')) as Readonly<Record<string, string>>)
    : {};
  if (known[letter] !== undefined && known[letter] !== hash)
    throw new Error(`${definition.id} was changed under revision ${letter}: give it a new letter.`);
  writeFileSync(path, `${JSON.stringify({ ...known, [letter]: hash }, null, 2)}\n`);
  writeFileSync(join(folder, `${definition.id}.sheet.md`), printSheet(definition));
  console.log(`${definition.id}, revision ${letter}: sheet printed.`);
}

try {
  for (const procedure of PROCEDURES) writeSheet(procedure);
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
}
