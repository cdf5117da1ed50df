/**
 * Asks the registry what is known against the packages that the server runs with (`npm audit`), and says what came of it in a line.
 * It ends with 1 only where something high or critical was named: a registry that does not answer such a question proves
 * nothing, and is told as that. `--read` takes what `npm audit --json` printed from its standard input instead.
 */
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';

const WAITS_MS = 8_000;

function asked() {
  const of = ['audit', '--omit=dev', '--json', '--fetch-retries=0'];
  const windows = process.platform === 'win32';
  const { stdout } = spawnSync(windows ? 'npm.cmd' : 'npm', of, {
    encoding: 'utf8',
    timeout: WAITS_MS,
    shell: windows,
  });
  return stdout ?? '';
}

/** @param {string} text  of `npm audit --json`; nothing of it is believed before it was looked at */
function counts(text) {
  try {
    const { metadata } = JSON.parse(text);
    const { high, critical, total } = metadata.vulnerabilities;
    return [high, critical, total].every(Number.isInteger) ? { bad: high + critical, total } : null;
  } catch {
    return null;
  }
}

const found = counts(process.argv.includes('--read') ? readFileSync(0, 'utf8') : asked());
if (found === null)
  console.log('Packages NOT AUDITED: the registry did not answer. Ask where one does: npm run audit');
else console.log(`Packages audited: ${found.total} known weaknesses, ${found.bad} of them high or critical.`);
process.exit(found !== null && found.bad > 0 ? 1 : 0);
