/** `npm run licences`: prints under which licences the packages of the lock file stand. Run from the project. */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { licencePage, licencesIn, notTaken } from '../install/licences.ts';

const packages = licencesIn(readFileSync('package-lock.json', 'utf8'));
const page = join('server', 'install', 'licences.md');
writeFileSync(page, licencePage(packages));
console.log(`${packages.length} packages: ${page}`);
for (const { name, licence } of notTaken(packages)) {
  console.error(`${name} comes under ${licence}, which nobody has taken yet.`);
  process.exitCode = 1;
}
