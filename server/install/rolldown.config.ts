/** `npm run build`: everything that runs, from the sources into `dist/`. Types are compared by `npm run types`. */
import { defineConfig } from 'rolldown';
import { programs } from './programs.ts';

export default defineConfig([...programs(process.cwd(), 'dist')]);
