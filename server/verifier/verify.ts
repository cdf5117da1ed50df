/**
 * What each export has as `verify.mjs`: the build makes one file of this one and the one beside it. Run it in the folder of the export:
 *
 *   node verify.mjs [--check NUMBER]... [--checkpoints FILE] [--key NUMBER] [FOLDER]
 *
 * It says whether all is whole, or the first bad entry, and which anchors it fits; it ends with 0, with 1 where something is wrong, and
 * with 2 where it could not look. That is tamper-evident against anyone who cannot also change the anchors: check numbers on paper,
 * and checkpoints kept where whoever has the log cannot write.
 */
import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import {
  checkOf,
  fileFaults,
  linesOf,
  type Manifest,
  readCheckpoints,
  type Verdict,
  verifyExport,
} from './verify-export.ts';

function run(): number {
  const { values, positionals } = parseArgs({
    allowPositionals: true,
    options: {
      check: { type: 'string', multiple: true },
      checkpoints: { type: 'string' },
      key: { type: 'string' },
    },
  });
  const folder = positionals[0] ?? dirname(fileURLToPath(import.meta.url));
  const manifest = JSON.parse(readFileSync(join(folder, 'manifest.json'), 'utf8')) as Manifest;
  const from = values.checkpoints ?? [join(folder, 'checkpoints.jsonl')].find((path) => existsSync(path));
  const { checkpoints, wrong, beforeRestore } = readCheckpoints(
    from === undefined ? '' : readFileSync(from, 'utf8'),
    values.key,
  );
  const anchors = { checks: values.check ?? [], checkpoints };
  const verdict = verifyExport(linesOf(join(folder, manifest.file.name)), { of: manifest.of, anchors });
  const against = [...wrong, ...verdict.against, ...fileFaults(folder, manifest, verdict)];
  const { fault, entries } = verdict;
  if (fault !== null)
    console.error(`NOT WHOLE. First bad entry: ${fault.entry}: ${fault.what}. Good before it: ${entries}.`);
  for (const one of against) console.error(`DOES NOT FIT: ${one}.`);
  if (fault !== null || against.length > 0) return 1;
  console.log(
    `Whole: ${entries} entries of ${manifest.of}. Last entry ${verdict.head.seq}, check number ${checkOf(verdict.head.hash)}.`,
  );
  if (beforeRestore > 0)
    console.log(
      `The log was restored: ${beforeRestore} checkpoints are of the log before. Look for the entry log-restored.`,
    );
  console.log(anchorWords(verdict, { isOwn: values.checkpoints === undefined && from !== undefined }));
  return 0;
}

function anchorWords({ fitting, aside }: Verdict, { isOwn }: { readonly isOwn: boolean }): string {
  const more = aside > 0 ? ` ${aside} checkpoints are of other entries than this export has.` : '';
  if (fitting === 0)
    return `No anchor was held against it.${more} A cut end, an older copy or a log written anew would not show: give a check number from paper with --check.`;
  const own = isOwn
    ? ' The checkpoints came with the export: a copy from elsewhere, or --check and --key from paper, says more.'
    : '';
  return `It fits ${fitting} anchors.${more}${own} Tamper-evident against anyone who cannot also change the anchors.`;
}

try {
  process.exitCode = run();
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 2;
}
