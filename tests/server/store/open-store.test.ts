import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { practiceBeside, practiceOpener } from '../../../server/store/open-store.ts';
import { StorageUnavailable } from '../../../server/store/storage-unavailable.ts';
import { aFolder } from '../../folders.ts';

test('The practice bench opens beside the data folder, whatever the name of that has in it', async () => {
  for (const name of ['data', 'Data of unit 7', 'datos de la planta ñ', "o'clock #1 100%"]) {
    const folder = join(aFolder(), name);
    const store = (await practiceOpener({ folder, database: '' }))();
    expect(practiceBeside(`${folder}/`)).toBe(`${folder}-practice`);
    await store.close();
  }
  expect(practiceBeside('C:\\Program Data\\Yokeside\\')).toBe('C:\\Program Data\\Yokeside-practice');
});

test('A practice bench that can have no folder says so, and is no fault that nobody understands', async () => {
  const file = join(aFolder(), 'file');
  writeFileSync(file, '');
  const open = await practiceOpener({ folder: join(file, 'data'), database: '' });
  expect(open).toThrow(StorageUnavailable);
  expect(open).toThrow('the practice bench has a folder of its own beside the data folder');
});
