import { join } from 'node:path';
import { rolldown } from 'rolldown';
import { programs } from '../server/install/programs.ts';
import { oncePerRun } from './once-per-run.ts';
import { ROOT } from './root.ts';

/** What tests start as a program of its own, beside those of the project. */
const OF_THE_TESTS = [
  'tests/faults/writer.ts',
  'tests/faults/bare-writer.ts',
  'tests/faults/moved-clock.ts',
  'views/render.ts',
];

/**
 * The program as it is built, so that a plain Node process can run it: Node 20 does not read TypeScript. All programs are
 * built at once, the first time in a run that one is asked for.
 *
 * @param script path from the root of the project, for example `tests/faults/writer.ts`
 * @returns path of the JavaScript file; gone when the run is through
 */
export async function compiled(script: string): Promise<string> {
  const folder = await oncePerRun('built', buildTo);
  return join(folder, script.replace(/\.ts$/, '.js'));
}

async function buildTo(folder: string): Promise<void> {
  for (const program of programs(ROOT, folder, OF_THE_TESTS)) {
    const bundle = await rolldown(program);
    await bundle.write(program.output);
    await bundle.close();
  }
}
