import { execFile } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { promisify } from 'node:util';
import { ROOT } from '../../root.ts';

/** A browser that can be started, or why there is none. */
export type FoundChromium =
  | { readonly executablePath: string; readonly environment: Readonly<Record<string, string>> }
  | { readonly missing: string };

export type Machine = Pick<NodeJS.Process, 'env' | 'platform' | 'arch'>;

const NONE =
  'No browser for this machine comes with the tests: they bring one for Linux on x64 only. ' +
  'Name a Chromium of yours in the variable CHROMIUM to run the browser tests too.';

/**
 * The browser that the tests run: what CHROMIUM names, else on Linux x64 the one that a package brings, unpacked once
 * into a folder that the next run finds again. There a failure is an error, never a test left out.
 */
export async function findChromium(on: Machine = process): Promise<FoundChromium> {
  const { CHROMIUM } = on.env;
  if (CHROMIUM) {
    if (!existsSync(CHROMIUM)) throw new Error(`CHROMIUM names ${CHROMIUM}, which is not there.`);
    return { executablePath: CHROMIUM, environment: {} };
  }
  if (on.platform !== 'linux' || on.arch !== 'x64') return { missing: NONE };
  return unpackedChromium(join(ROOT, '.cache', `chromium-${packagedVersion()}`));
}

async function unpackedChromium(folder: string): Promise<FoundChromium> {
  if (!existsSync(folder)) await unpackTo(folder);
  return {
    executablePath: join(folder, 'chromium'),
    environment: {
      LD_LIBRARY_PATH: join(folder, 'al2023', 'lib'),
      FONTCONFIG_FILE: join(folder, 'fonts.conf'),
    },
  };
}

/**
 * Unpacks beside the folder and renames, so that a run that was stopped leaves nothing half, and two runs at once do
 * not write into each other's program. In a process of its own: the package changes the environment of whoever loads it.
 */
async function unpackTo(folder: string): Promise<void> {
  const beside = `${folder}.${process.pid}`;
  mkdirSync(beside, { recursive: true });
  const script = "import chromium from '@sparticuz/chromium'; await chromium.executablePath();";
  try {
    await promisify(execFile)(process.execPath, ['--input-type=module', '--eval', script], {
      cwd: ROOT,
      // By the second variable the package knows that its own libraries are wanted.
      env: { ...process.env, TMPDIR: beside, AWS_EXECUTION_ENV: 'AWS_Lambda_nodejs20.x' },
    });
    writeFileSync(join(beside, 'fonts.conf'), fontsConf(folder));
    if (!existsSync(folder)) renameSync(beside, folder);
  } finally {
    rmSync(beside, { recursive: true, force: true });
  }
}

/** The one that the package brings looks for its fonts where no machine of ours has them. */
function fontsConf(folder: string): string {
  return `<?xml version="1.0"?>
<!DOCTYPE fontconfig SYSTEM "fonts.dtd">
<fontconfig>
  <dir>${join(folder, 'fonts')}</dir>
  <cachedir>${join(folder, 'fonts-cache')}</cachedir>
</fontconfig>
`;
}

function packagedVersion(): string {
  const entry = createRequire(import.meta.url).resolve('@sparticuz/chromium');
  let folder = dirname(entry);
  while (!existsSync(join(folder, 'bin'))) folder = dirname(folder);
  const { version } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8')) as { version: string };
  return version;
}
