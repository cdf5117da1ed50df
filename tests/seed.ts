import fc from 'fast-check';

/**
 * The same values on every ordinary run, so that a change is judged by what it changed. A long run draws new ones;
 * `YOKESIDE_SEED` draws those of a run that failed.
 */
const given = process.env.YOKESIDE_SEED;
const isLong = process.env.YOKESIDE_LONG !== undefined;
if (given !== undefined) fc.configureGlobal({ seed: Number(given) });
else if (!isLong) fc.configureGlobal({ seed: 20_261_125 });
