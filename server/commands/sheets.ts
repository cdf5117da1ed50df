/**
 * `npm run sheets`: prints every procedure as a sheet for review and writes down the hash of its newest revision.
 * A revision that has a hash keeps it: a procedure that was changed needs a new letter first. Run from the project.
 * `npm run sheets -- FOLDER [PROCEDURE ...]`: writes any procedure, or all, into that folder as a plain document and as
 * a statechart picture, and nothing else.
 */
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { PROCEDURES } from '../../procedures/served.ts';
import type { ServedProcedure } from '../../procedures/served-procedure.ts';
import { printSheet } from '../../procedures/sheet-print.ts';
import { asJson, revisionOf } from '../../procedures/vocabulary.ts';
import { canonical } from '../log/canonical.ts';
import { chartFile } from '../procedures/chart-file.ts';

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

/** Document and picture of the procedures that were named, of all where none was. */
function writeInto(folder: string, ids: readonly string[]): void {
  const unknown = ids.filter((id) => PROCEDURES.every(({ definition }) => definition.id !== id));
  if (unknown.length > 0)
    throw new Error(
      `There is no procedure ${unknown.join(', ')}. There are: ${PROCEDURES.map(({ definition }) => definition.id).join(', ')}.`,
    );
  mkdirSync(folder, { recursive: true });
  for (const { definition } of PROCEDURES) {
    if (ids.length > 0 && !ids.includes(definition.id)) continue;
    writeFileSync(join(folder, `${definition.id}.md`), printSheet(definition));
    writeFileSync(join(folder, `${definition.id}.svg`), chartFile(definition));
    console.log(`${definition.id}, revision ${revisionOf(definition)}: document and picture written.`);
  }
}

try {
  const [folder, ...ids] = process.argv.slice(2);
  if (folder === undefined) for (const procedure of PROCEDURES) writeSheet(procedure);
  else writeInto(resolve(folder), ids);
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
}
