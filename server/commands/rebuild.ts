/** `npm run rebuild`: makes every list anew from the log, of a site or of its practice bench. Stop the server first. */
import { markLists } from '../log/lists-form.ts';
import { rebuildSummaries } from '../log/rebuild.ts';
import { practiceKinds } from '../practice/practice-site.ts';
import { dataPath } from '../store/data-folder.ts';
import { openSqliteStore } from '../store/sqlite-store.ts';

try {
  const store = openSqliteStore({ folder: dataPath(process.env) });
  try {
    const streams = await rebuildSummaries(store, practiceKinds);
    await markLists(store);
    console.log(`Lists made anew from the entries of ${streams} streams.`);
  } finally {
    await store.close();
  }
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
}
