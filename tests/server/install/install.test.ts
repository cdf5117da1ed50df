import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { readConfig } from '../../../server/config.ts';
import { licencePage, licencesIn, notTaken } from '../../../server/install/licences.ts';
import { practiceBeside } from '../../../server/store/open-store.ts';
import { ROOT } from '../../root.ts';

const read = (path: string) => readFileSync(join(ROOT, path), 'utf8');

describe('the licences of the packages', () => {
  const packages = licencesIn(read('package-lock.json'));

  test('are all ones that this project takes', () => {
    expect(packages.length).toBeGreaterThan(50);
    expect(notTaken(packages)).toEqual([]);
  });

  test('stand on the page that `npm run licences` prints', () => {
    expect(read('server/install/licences.md')).toBe(licencePage(packages));
  });

  test.each([
    ['a licence that nobody took', { license: 'GPL-3.0' }, 'GPL-3.0'],
    ['one for tests alone, in what the server runs with', { license: 'MPL-2.0' }, 'MPL-2.0'],
    ['none', {}, 'none named'],
  ])('%s is found', (_, one, licence) => {
    const lock = JSON.stringify({
      packages: { 'node_modules/a/node_modules/b': { version: '1.0.0', ...one } },
    });
    expect(notTaken(licencesIn(lock))).toEqual([{ name: 'b', version: '1.0.0', licence, isForTests: false }]);
    const forTests = licencesIn(lock.replace('1.0.0"', '1.0.0","dev":true'));
    expect(notTaken(forTests)).toHaveLength(licence === 'MPL-2.0' ? 0 : 1);
  });
});

describe('the audit of the packages', () => {
  const audited = (printed: string) => {
    const script = join(ROOT, '.ci', 'audit.mjs');
    const { status, stdout } = spawnSync(process.execPath, [script, '--read'], {
      input: printed,
      encoding: 'utf8',
    });
    return [status, stdout.trim()];
  };
  const report = (counts: object, vulnerabilities?: object) =>
    JSON.stringify({ metadata: { vulnerabilities: counts }, vulnerabilities });
  const named = { one: { name: 'one', severity: 'high' }, two: { name: 'two', severity: 'low' } };

  test.each([
    [
      'nothing high is known',
      report({ low: 2, high: 0, critical: 0, total: 2 }),
      0,
      '2 known weaknesses, 0 of',
    ],
    ['something critical is', report({ high: 1, critical: 1, total: 3 }), 1, '3 known weaknesses, 2 of'],
    ['one is, by its name', report({ high: 1, critical: 0, total: 2 }, named), 1, 'Look at: one'],
    [
      'the registry takes no such question',
      JSON.stringify({ statusCode: 405 }),
      0,
      'NOT AUDITED: the registry refuses such a question (405)',
    ],
    ['nothing came', '', 0, 'NOT AUDITED: what came back is no answer'],
    ['the counts are none', report({ high: '0', critical: 0, total: 0 }), 0, 'NOT AUDITED'],
  ])('says it where %s', (_, printed, ends, says) => {
    const [status, line] = audited(printed);
    expect([status, line]).toEqual([ends, expect.stringContaining(says)]);
  });
});

describe('what a service is installed with', () => {
  const unit = read('server/install/yokeside.service');
  const container = read('server/install/Containerfile');

  test('the unit sets only variables that the program reads, to values that it takes, and starts what is built', () => {
    const set = [...unit.matchAll(/^#?Environment=(\w+)=(.+)$/gm)].map(([, name = '', value = '']) => [
      name,
      value,
    ]);
    const environment = Object.fromEntries(set) as Record<string, string>;
    const config = readConfig(environment);
    expect(config.folder).toBe('/srv/yokeside/data');
    expect(config.backups?.to).toBe('/srv/yokeside-backups');
    expect(config.tls).toEqual({ certFile: '/etc/yokeside/cert.pem', keyFile: '/etc/yokeside/key.pem' });
    const documented = new Set(read('README.md').match(/\bYOKESIDE_[A-Z_]+\b/g));
    expect(Object.keys(environment).filter((name) => !documented.has(name))).toEqual([]);
    const start = JSON.parse(read('package.json')).scripts.start as string;
    expect(unit).toContain(`ExecStart=/usr/bin/${start}\n`);
    // Longer than a graceful stop takes, so that the system does not kill it meanwhile.
    expect(Number(/TimeoutStopSec=(\d+)/.exec(unit)?.[1])).toBeGreaterThan(5);
  });

  test('the container copies folders that are there, all that the build wants, and runs as nobody special', () => {
    const copied = [...container.matchAll(/^COPY (?!--)(.+) \S+$/gm)].flatMap(([, names = '']) =>
      names.split(' '),
    );
    expect(copied.filter((name) => !existsSync(join(ROOT, name)))).toEqual([]);
    const built = JSON.parse(read('tsconfig.json')).include as readonly string[];
    expect(built.filter((name) => !copied.includes(name.split('/')[0] ?? ''))).toEqual([]);
    expect(container).toMatch(/^USER node$/m);
    // The folder of the practice bench, too, has to stand in what is kept and may be written.
    const volumes = JSON.parse(/^VOLUME (.+)$/m.exec(container)?.[1] ?? '[]') as readonly string[];
    const data = /YOKESIDE_DATA=(\S+)/.exec(container)?.[1] ?? '';
    for (const folder of [data, practiceBeside(data)])
      expect(
        volumes.some((volume) => folder.startsWith(`${volume}/`)),
        folder,
      ).toBe(true);
    expect(container).toContain(
      JSON.stringify(JSON.parse(read('package.json')).scripts.start.split(' ')).replaceAll(',', ', '),
    );
  });
});
