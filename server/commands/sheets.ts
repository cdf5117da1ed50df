/**
 * `npm run sheets`: prints every procedure as a sheet for review and writes down the hash of its newest revision.
 * A revision that has a hash keeps it: a procedure that was changed needs a new letter first. Run from the project.
 */
import { createHash } from 'node:crypto';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { strokeCheck } from '../../procedures/commissioning/stroke-check.ts';
import { printSheet } from '../../procedures/sheet-print.ts';
import { asJson, type Definition, revisionOf } from '../../procedures/vocabulary.ts';
import { canonical } from '../log/canonical.ts';

const FOLDER = join(process.cwd(), 'procedures', 'commissioning');

function writeSheet(definition: Definition): void {
  const path = join(FOLDER, `${definition.id}.revisions.json`);
  const letter = revisionOf(definition);
  const hash = createHash('sha256')
    .update(canonical(asJson(definition)), 'utf8')
    .digest('hex');
  const known = JSON.parse(readFileSync(path, 'utf8')) as Readonly<Record<string, string>>;
  if (known[letter] !== undefined && known[letter] !== hash)
    throw new Error(`${definition.id} was changed under revision ${letter}: give it a new letter.`);
  writeFileSync(path, `${JSON.stringify({ ...known, [letter]: hash }, null, 2)}\n`);
  writeFileSync(join(FOLDER, `${definition.id}.sheet.md`), printSheet(definition));
  console.log(`${definition.id}, revision ${letter}: sheet printed.`);
}

try {
  writeSheet(strokeCheck);
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
}
