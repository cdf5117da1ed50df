/**
 * `npm run let-in -- "Engineer 1"`: a one-time code for somebody whom nobody is left to give one to. It needs the data
 * folder of this very machine, and the server stopped; everybody who signs in afterwards is told for a week.
 * `--new-key` where the key of the PINs is lost for good: it makes another one and voids every PIN.
 */
import { randomUUID } from 'node:crypto';
import { existsSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { Refusal } from '../../safety/refusal.ts';
import { type Config, readConfig } from '../config.ts';
import { SiteLog } from '../log/site-log.ts';
import { hasSecrets } from '../people/accounts.ts';
import type { NewCode } from '../people/people.ts';
import { readPepper } from '../people/pepper.ts';
import { SitePeople } from '../people/site-people.ts';
import { codeVersion } from '../project-folder.ts';
import { SETTINGS } from '../settings.ts';
import { dataFolder } from '../store/data-folder.ts';
import { openStore } from '../store/open-store.ts';
import { streamKinds } from '../streams.ts';

const CONSOLE = 'server console';

async function letIn(name: string, newKey: boolean): Promise<NewCode> {
  const config = readConfig({ ...process.env, YOKESIDE_HOST: '' });
  if (config.database === '' && !existsSync(dataFolder(config.folder).database))
    throw new Error(
      `There is no log in the folder ${config.folder}. Name the server's own in YOKESIDE_DATA.`,
    );
  if (newKey && existsSync(config.pepperFile))
    throw new Error(`The key is at ${config.pepperFile}, so it is not lost: do without --new-key.`);
  const store = await openStore(config);
  const now = (): Date => new Date();
  const log = new SiteLog({ store, kinds: streamKinds, now, codeVersion: codeVersion() });
  try {
    const pepper = readPepper({ ...placeOf(config), isInUse: !newKey && (await hasSecrets(store)) });
    const people = new SitePeople({ log, store, settings: SETTINGS, pepper, now });
    return await people.letIn({ name, newKey }, { requestId: randomUUID(), person: null, screen: CONSOLE });
  } finally {
    await log.close();
  }
}

function placeOf({ pepperFile, folder }: Config): { readonly file: string; readonly dataFolder: string } {
  return { file: pepperFile, dataFolder: folder };
}

function say({ person, code, validUntil }: NewCode): void {
  console.log(`One-time code for ${person.name} (${person.id}): ${code}`);
  console.log(
    `Good until ${validUntil}. With it they choose a PIN at "First time here" on the sign-in page.`,
  );
  console.log('The log has an entry of it, and everybody who signs in reads of it for a week.');
}

try {
  const { values, positionals } = parseArgs({
    allowPositionals: true,
    options: { 'new-key': { type: 'boolean', default: false } },
  });
  const [name, ...more] = positionals;
  if (name === undefined || more.length > 0)
    throw new Error(
      'Name one person: npm run let-in -- "Engineer 1". A name of two words stands in quotation marks.',
    );
  say(await letIn(name, values['new-key']));
} catch (error) {
  if (error instanceof Refusal) console.error(`${error.text.what} ${error.text.next}`);
  else console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
}
