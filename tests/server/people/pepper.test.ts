import { cpSync, existsSync, mkdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { pepperBeside } from '../../../server/config.ts';
import { readPepper } from '../../../server/people/pepper.ts';
import { SitePeople } from '../../../server/people/site-people.ts';
import { aFolder } from '../../folders.ts';
import { anApp, PINS } from '../an-app.ts';

function aPlace(isInUse = false) {
  const dataFolder = join(aFolder(), 'data');
  mkdirSync(dataFolder);
  return { dataFolder, file: pepperBeside(dataFolder), isInUse };
}

describe('the key that PINs are hashed with', () => {
  test('is made at the first start, in a folder of its own that nobody else reads, and is the same ever after (WS-04)', () => {
    const place = aPlace();
    const pepper = readPepper(place);
    expect(pepper).toHaveLength(32);
    expect(readPepper({ ...place, isInUse: true })).toEqual(pepper);
    expect(dirname(place.file)).not.toBe(place.dataFolder);
    expect(place.file.startsWith(join(place.dataFolder, '/'))).toBe(false);
    if (process.platform !== 'win32') {
      expect(statSync(place.file).mode & 0o777).toBe(0o600);
      expect(statSync(dirname(place.file)).mode & 0o777).toBe(0o700);
    }
    expect(readPepper(aPlace())).not.toEqual(pepper);
  });

  test('is missed where the data folder was copied without it: no new one is made over PINs that need the old (WS-04)', () => {
    const place = aPlace(true);
    expect(() => readPepper(place)).toThrow('without it nobody can sign in');
    expect(existsSync(place.file)).toBe(false);
  });

  test('is moved out of the data folder, where an earlier release had it', () => {
    const place = aPlace(true);
    const former = join(place.dataFolder, 'yokeside.pepper');
    writeFileSync(former, `${'ab'.repeat(32)}\n`, { mode: 0o600 });
    expect(readPepper(place)).toEqual(Buffer.from('ab'.repeat(32), 'hex'));
    expect([existsSync(former), readFileSync(place.file, 'utf8').trim()]).toEqual([false, 'ab'.repeat(32)]);
  });

  test('that was changed is refused in plain words', () => {
    const place = aPlace();
    readPepper(place);
    writeFileSync(place.file, 'ab');
    expect(() => readPepper(place)).toThrow('was changed. Put the backup of it back.');
  });
});

test('a copy of the whole data folder lets nobody in with the right PIN, without the key from outside it (WS-04)', async () => {
  const app = await anApp({ people: true, routes: [] });
  await app.close();
  const copy = join(aFolder(), 'copy');
  cpSync(app.folder, copy, { recursive: true });
  const { services, close } = await anApp({ folder: copy, routes: [] });
  const { log, store, settings, now } = services;
  const claim = { who: 't1', pin: PINS.technician, screen: 'screen 9' };
  const stranger = new SitePeople({ log, store, settings, pepper: Buffer.alloc(32, 8), now: () => now() });
  await expect(stranger.verify(claim)).rejects.toMatchObject({ text: { code: 'PPL-001' } });
  expect(await services.people.verify(claim)).toMatchObject({ id: 't1' });
  await close();
});
