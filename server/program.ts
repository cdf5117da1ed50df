/**
 * `npm start`: makes the data folder if need be, opens the log, listens, and says where. What a person at the console
 * reads goes to stderr; stdout has the operations log alone.
 */
import { randomBytes, randomInt, randomUUID } from 'node:crypto';
import { existsSync } from 'node:fs';
import { setTimeout as after, setImmediate as letOthers } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { warmUpSteps } from '../procedures/troubleshooting/job/warm-up.ts';
import { createApp } from './app.ts';
import { backUpInProcess } from './backups/backup-process.ts';
import { keepBackingUp } from './backups/keep-backing-up.ts';
import { type Config, isReachedFromOutside, ownOrigins, readConfig } from './config.ts';
import { loadDemoPlant } from './demo/demo-plant.ts';
import { readAssets } from './http/assets.ts';
import { proveAll } from './jobs/catalogue.ts';
import { Checkpoints, checkpointPlace } from './log/checkpoints.ts';
import { renewLists } from './log/lists-form.ts';
import { keepMarking } from './log/mark-checkpoints.ts';
import { watchClock } from './log/watch-clock.ts';
import { makeServices } from './make-services.ts';
import { faultDetails } from './operations-log.ts';
import { hasSecrets } from './people/accounts.ts';
import { readPepper } from './people/pepper.ts';
import { practiceKinds } from './practice/practice-site.ts';
import { builtFolder, codeVersion, projectFolder } from './project-folder.ts';
import { allRoutes } from './routes.ts';
import { type Listening, listen } from './serve.ts';
import type { Services } from './services.ts';
import { SETTINGS, type Settings } from './settings.ts';
import { openStore, practiceBeside, practiceOpener, type StorePlace } from './store/open-store.ts';
import { sqliteVersion } from './store/sqlite-version.ts';
import type { Store } from './store/store.ts';
import { streamKinds } from './streams.ts';

async function start(): Promise<void> {
  const config = readConfig(process.env);
  const store = await openStore(config);
  const pepper = readPepper({
    file: config.pepperFile,
    dataFolder: config.folder,
    isInUse: await hasSecrets(store),
  });
  const checkpoints = new Checkpoints(checkpointPlace(config.pepperFile, config.checkpointFile));
  const distrust = await checkpoints.compare(store);
  const project = projectFolder();
  const assets = readAssets(project, builtFolder());
  const version = codeVersion();
  const listening = await listen(config);
  await renewAllLists({ store, place: config });
  const origins = ownOrigins(config, listening.port);
  // Moved only while an empty site is filled with the invented plant, so that its year has its dates.
  let demoBackMs = 0;
  const services = makeServices({
    store,
    practiceStore: await practiceOpener(config),
    settings: settingsFor(config, origins),
    machine: { folder: config.database === '' ? config.folder : null, backups: config.backups },
    pepper,
    checkpoints,
    project,
    codeVersion: version,
    asset: assets.address,
    now: () => new Date(Date.now() - demoBackMs),
    newId: randomUUID,
    drawSeed: () => randomInt(2 ** 31),
    out: (line) => console.log(line),
  });
  const loadDemo = (empty: Services) =>
    loadDemoPlant(empty, (backMs) => {
      demoBackMs = backMs;
    });
  listening.answerWith(
    createApp({ services, routes: allRoutes({ assets, codeVersion: version, loadDemo }) }),
  );
  if (distrust !== null)
    console.error(`READ-ONLY: the log is not the one that was here before. ${distrust.what}`);
  const marked = keepMarking({
    log: services.log,
    checkpoints,
    // Not the demo plant's, which is set back while it is filled.
    now: () => new Date(),
    report: (error) => services.operations.write('fault', faultDetails(error)),
  });
  const watched = watchClock({
    log: services.log,
    read: () => ({ clockMs: Date.now(), countMs: performance.now() }),
    report: (error) => services.operations.write('fault', faultDetails(error)),
  });
  const backedUp = keepCopies(config, services);
  services.operations.write('started', { address: origins[0] ?? '', version, sqlite: sqliteVersion() });
  await greet(services);
  stopOnSignal({ services, listening, before: [watched, backedUp, marked] });
  await after(PROVE_AFTER_MS);
  await proveAll();
  for (const step of warmUpSteps()) {
    await letOthers();
    step();
  }
}

/** Whoever waits for the server comes first; a job that is opened before proves its own procedure. */
const PROVE_AFTER_MS = 3000;

/** The server’s own backups, where a folder for them is named. @returns what stops them */
function keepCopies({ backups, folder }: Config, { store, operations }: Services): () => Promise<void> {
  if (backups === null) return async () => {};
  const script = fileURLToPath(new URL('./commands/backup.js', import.meta.url));
  return keepBackingUp({
    plan: backups,
    store,
    // The true time, also while the demo plant is filled.
    now: () => new Date(),
    make: (stop) => backUpInProcess({ script, dataFolder: folder, plan: backups, stop }),
    report: (error) => operations.write('backup-failed', faultDetails(error)),
    done: (backup) => operations.write('backed-up', { ...backup }),
  });
}

/** After an update the lists may want making anew; meanwhile callers are told that the server is starting. */
async function renewAllLists(of: { readonly store: Store; readonly place: StorePlace }): Promise<void> {
  const beforeRebuild = () => console.error('The lists of another release are made anew from the log.');
  const renewed = await renewLists({ store: of.store, kinds: streamKinds, beforeRebuild });
  if (renewed === 'left: the log is damaged')
    console.error('The log is damaged, so its lists stay as they were. Run "npm run verify".');
  // In a database the bench has its schema from the first start on.
  if (of.place.database === '' && !existsSync(practiceBeside(of.place.folder))) return;
  const practice = await openStore(of.place, { practice: true });
  try {
    await renewLists({ store: practice, kinds: practiceKinds });
  } finally {
    await practice.close();
  }
}

function settingsFor(config: Config, origins: readonly string[]): Settings {
  return {
    ...SETTINGS,
    origins,
    setUpToken: isReachedFromOutside(config) ? randomBytes(9).toString('base64url') : null,
    isOpenHttp: !config.isLoopback && config.tls === null,
  };
}

async function greet({ people, settings }: Services): Promise<void> {
  const { origins, setUpToken, isOpenHttp } = settings;
  console.error(`Yokeside is at ${origins[0]}`);
  if (isOpenHttp)
    console.error('It can be reached from other machines, without encryption. Keep it inside the plant.');
  if (process.getuid?.() === 0)
    console.error(
      'It runs as the administrator of this machine. A user of its own, without rights, is safer.',
    );
  if (setUpToken !== null && (await people.isEmpty())) console.error(`Set-up token: ${setUpToken}`);
}

interface Stopping {
  readonly services: Services;
  readonly listening: Listening;
  /** What ends before the log is closed, in this order: the last checkpoint comes last. */
  readonly before: readonly (() => Promise<void>)[];
}

function stopOnSignal({ services, listening, before }: Stopping): void {
  const { log, live, operations, practice } = services;
  const stop = async (signal: NodeJS.Signals): Promise<void> => {
    operations.write('stopping', { signal });
    await live.close();
    await listening.stop();
    for (const end of before) await end();
    await practice.close();
    await log.close();
    operations.write('stopped');
    process.exit(0);
  };
  // What started it may pass on a signal that came to the whole group: a second one is the same wish, and must not cut the stop short.
  let isStopping = false;
  const asked = (signal: NodeJS.Signals): void => {
    if (!isStopping) void stop(signal);
    isStopping = true;
  };
  for (const signal of ['SIGINT', 'SIGTERM'] as const) process.on(signal, asked);
}

start().catch((error: unknown) => {
  console.error(error instanceof Error ? error.message : error);
  process.exit(1);
});
