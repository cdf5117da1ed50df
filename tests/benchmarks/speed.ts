/**
 * `npm run benchmark`: every ratio of speed with its goal, each beside its baseline measured in the same run. `-- --lasts 10` for longer
 * looks in seconds, `--only proof` for some of readings, log, proof, start and search.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { availableParallelism, loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { ROOT } from '../root.ts';
import { measureColdStart } from './cold-start.ts';
import { measureLog } from './log-speed.ts';
import { measureProof } from './proof-speed.ts';
import type { Ratio } from './ratio.ts';
import { measureReadings } from './readings.ts';
import { measureSearch } from './search-speed.ts';

const { values } = parseArgs({
  options: { lasts: { type: 'string', default: '4' }, only: { type: 'string', default: '' } },
});
const folder = mkdtempSync(join(tmpdir(), 'yokeside-benchmark-'));

const PARTS: Readonly<Record<string, () => Promise<readonly Ratio[]>>> = {
  // First: it is meant for a process in which nothing was proved before.
  proof: async () => [await measureProof()],
  start: async () => [await measureColdStart(folder, join(ROOT, 'dist/server/main.js'))],
  search: () => measureSearch(folder, join(ROOT, 'dist/server/main.js')),
  log: () => measureLog(folder),
  readings: () => measureReadings(folder, Number(values.lasts)),
};

function print({ what, measured, goal, isReached, from }: Ratio): void {
  console.log(
    `${isReached ? 'reached    ' : 'NOT reached'} ${what}: ${measured}, goal ${goal}\n            ${from}`,
  );
}

try {
  const load = loadavg().map((average) => average.toFixed(1));
  console.log(
    `Node ${process.version}, ${availableParallelism()} processors, load before it ${load.join(' ')}`,
  );
  for (const [name, measure] of Object.entries(PARTS))
    if (new RegExp(values.only).test(name)) for (const ratio of await measure()) print(ratio);
} finally {
  rmSync(folder, { recursive: true, force: true, maxRetries: 3 });
}
