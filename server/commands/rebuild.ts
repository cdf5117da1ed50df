/**
 * `npm run rebuild`: makes every list anew from the log, of a site or of its practice bench. Stop the server first. It
 * says every second how far it is; stopped by Ctrl-C, the lists stay as they were.
 */
import { markLists } from '../log/lists-form.ts';
import { rebuildTold } from '../log/rebuild.ts';
import type { Tell } from '../long/long-work.ts';
import { practiceKinds } from '../practice/practice-site.ts';
import { openStore, storePlace } from '../store/open-store.ts';

try {
  const store = await openStore(storePlace(process.env));
  try {
    const streams = await rebuildTold(store, { kinds: practiceKinds, tell: everySecond() });
    await markLists(store);
    console.log(`Lists made anew from the entries of ${streams} streams.`);
  } finally {
    await store.close();
  }
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
}

/** Nothing is said of what takes less than a second. */
function everySecond(): Tell {
  let saidMs = performance.now();
  return async ({ done, of }) => {
    if (performance.now() - saidMs < 1000) return;
    saidMs = performance.now();
    console.error(`${done} of ${of} streams. Ctrl-C stops it; the lists then stay as they were.`);
  };
}
