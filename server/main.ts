/** What `npm start` runs once it is built: the server, with the code that the build made of it. */
import { fileURLToPath } from 'node:url';
import { runWithCode } from './compiled-code.ts';

runWithCode(fileURLToPath(new URL('./program.cjs', import.meta.url)));
