/** `npm run build`: everything that runs, from the sources into `dist/`, without a word where all is well. */
import { build } from 'rolldown';
import { loadConfig } from 'rolldown/config';

await build(await loadConfig('server/install/rolldown.config.ts'));
