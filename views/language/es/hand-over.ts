import type { Catalogue } from '../patterns.ts';

/** A repair that goes on from the job that looked for its fault, and other work on the practice bench. */
export const handOver = {
  'It does not go on as that job.': 'No sigue como ese trabajo.',
  '{1} On its card, give the valve back instead.': '{1} En su tarjeta, devuelva la válvula en su lugar.',
  'It went on as': 'Siguió como el',
  ', with every lock where it hung.': ', con cada candado donde colgaba.',
  'Practise other work on this simulated valve': 'Practicar otro trabajo en esta válvula simulada',
} as const satisfies Catalogue;
