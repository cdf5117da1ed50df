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
  const { stdout, error } = spawnSync(windows ? 'npm.cmd' : 'npm', of, {
    encoding: 'utf8',
    timeout: WAITS_MS,
    shell: windows,
  });
  if (error?.code === 'ETIMEDOUT') return { why: `no answer came within ${WAITS_MS / 1000} s` };
  return error ? { why: `npm did not run (${error.code})` } : { text: stdout };
}

/**
 * @param {string} text  of `npm audit --json`; nothing of it is believed before it was looked at
 * @returns counts and names, or why there are none
 */
function foundIn(text) {
  try {
    const { metadata, vulnerabilities, statusCode } = JSON.parse(text);
    if (Number.isInteger(statusCode)) return { why: `the registry refuses such a question (${statusCode})` };
    const { high, critical, total } = metadata.vulnerabilities;
    if (![high, critical, total].every(Number.isInteger)) throw new TypeError('no counts');
    const isBad = ({ severity }) => severity === 'high' || severity === 'critical';
    const names = Object.values(vulnerabilities ?? {}).filter(isBad);
    return { bad: high + critical, total, names: names.map(({ name }) => name) };
  } catch {
    return { why: 'what came back is no answer to it' };
  }
}

const { text, why: unasked } = process.argv.includes('--read') ? { text: readFileSync(0, 'utf8') } : asked();
const { bad = 0, total, names = [], why } = unasked ? { why: unasked } : foundIn(text);
if (why) console.log(`Packages NOT AUDITED: ${why}. Ask where one answers: npm run audit`);
else {
  console.log(`Packages audited: ${total} known weaknesses, ${bad} of them high or critical.`);
  if (names.length > 0) console.log(`Look at: ${names.join(', ')}`);
}
process.exit(bad > 0 ? 1 : 0);
