/**
 * Runs a PostgreSQL server for as long as a run of tests: it stops, and its files go, when the folder of the run is gone
 * or the process that the run belongs to has ended.
 *
 * node keep.mjs <folder of the run> <process of the run> <folder of the server> <user id, or 0> <program> <parameters...>
 */
import { spawn } from 'node:child_process';
import { existsSync, rmSync } from 'node:fs';

const [run = '', owner = '', files = '', user = '0', program = '', ...parameters] = process.argv.slice(2);
const id = Number(user);
const as = id === 0 ? {} : { uid: id, gid: id };
const server = spawn(program, parameters, { cwd: files, stdio: 'ignore', ...as });
let hasEnded = false;
server.on('exit', () => {
  hasEnded = true;
});

// Of a server that a test has killed the files stay: the next one is started on them.
setInterval(() => {
  if (existsSync(run) && isAlive(Number(owner))) return;
  if (!hasEnded) {
    // At once, without waiting for connections: nothing of it is wanted any more.
    server.kill('SIGQUIT');
    return;
  }
  rmSync(files, { recursive: true, force: true, maxRetries: 3 });
  process.exit(0);
}, 200);

function isAlive(pid) {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return error.code === 'EPERM';
  }
}
