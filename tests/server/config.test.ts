import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { isReachedFromOutside, ownOrigins, readConfig } from '../../server/config.ts';

describe('what the environment says', () => {
  test('is this machine alone, port 8430 and a folder beside the program, unless asked', () => {
    expect(readConfig({})).toEqual({
      port: 8430,
      host: '127.0.0.1',
      isLoopback: true,
      folder: 'yokeside-data',
      database: '',
      pepperFile: join('yokeside-data-key', 'yokeside.pepper'),
      checkpointFile: '',
      origins: [],
      backups: null,
      tls: null,
    });
    expect(readConfig({ YOKESIDE_PORT: '', YOKESIDE_HOST: '', YOKESIDE_DATA: '' })).toEqual(readConfig({}));
  });

  test.each(['abc', '-1', '70000', '80.5', '0x50', '8 0'])('refuses the port %s in plain words', (port) => {
    expect(() => readConfig({ YOKESIDE_PORT: port })).toThrow('it takes a number from 0 to 65535');
  });

  test.each(['valves.example', 'ftp://a', 'http://a/b', 'http://', 'javascript:x'])(
    'refuses the address %s',
    (origin) => {
      expect(() => readConfig({ YOKESIDE_ORIGINS: origin })).toThrow('it takes addresses as https://');
    },
  );

  test('asks for a token at the first set-up wherever somebody else can reach it, through a proxy too (WS-16)', () => {
    const from = (environment: Record<string, string>) => isReachedFromOutside(readConfig(environment));
    expect(from({})).toBe(false);
    expect(from({ YOKESIDE_ORIGINS: 'https://valves.example' })).toBe(true);
    expect(from({ YOKESIDE_HOST: '0.0.0.0', YOKESIDE_PLAIN_HTTP: 'yes' })).toBe(true);
  });

  test('gives the addresses that the server is known by: of this machine alone', () => {
    expect(ownOrigins(readConfig({}), 8500)).toEqual([
      'http://127.0.0.1:8500',
      'http://[::1]:8500',
      'http://localhost:8500',
    ]);
  });

  test('or those of the network as well, and those given by hand first', () => {
    const config = readConfig({
      YOKESIDE_HOST: '0.0.0.0',
      YOKESIDE_PLAIN_HTTP: 'yes',
      YOKESIDE_ORIGINS: 'https://Valves.example/, http://v:81',
    });
    expect(config.isLoopback).toBe(false);
    const origins = ownOrigins(config, 8430);
    expect(origins.slice(0, 2)).toEqual(['https://valves.example', 'http://v:81']);
    expect(origins).toContain('http://127.0.0.1:8430');
    for (const origin of origins) expect(new URL(origin).origin).toBe(origin);
  });

  test('or those of one address', () => {
    const origins = ownOrigins(readConfig({ YOKESIDE_HOST: '192.0.2.7', YOKESIDE_PLAIN_HTTP: 'yes' }), 8430);
    expect(origins[0]).toBe('http://192.0.2.7:8430');
    expect(origins).not.toContain('http://0.0.0.0:8430');
  });

  test('asks for backups of its own where a folder is named, each day and kept for ninety unless asked', () => {
    expect(readConfig({}).backups).toBeNull();
    expect(readConfig({ YOKESIDE_BACKUPS: '/b' }).backups).toEqual({
      to: '/b',
      everyHours: 24,
      keepDays: 90,
    });
    const asked = { YOKESIDE_BACKUPS: '/b', YOKESIDE_BACKUP_HOURS: '6', YOKESIDE_BACKUP_KEEP_DAYS: '365' };
    expect(readConfig(asked).backups).toEqual({ to: '/b', everyHours: 6, keepDays: 365 });
    for (const hours of ['0', '721', '1.5', 'daily', '-1'])
      expect(() => readConfig({ YOKESIDE_BACKUP_HOURS: hours })).toThrow('YOKESIDE_BACKUP_HOURS');
    expect(readConfig({ ...asked, YOKESIDE_DATABASE: 'postgres://h/d' })).toMatchObject({
      backups: { to: '/b' },
      database: 'postgres://h/d',
    });
    expect(() => readConfig({ YOKESIDE_BACKUP_KEEP_DAYS: '0' })).toThrow('whole number from 1 to 36500');
  });
});
