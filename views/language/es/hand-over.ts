import type { Catalogue } from '../patterns.ts';

/** A repair that goes on from the job that looked for its fault, and other work on the practice bench. */
export const handOver = {
  'Name it: it may go on at once as its own job, with the valve as it stands.':
    'Nómbrela: puede seguir enseguida como trabajo propio, con la válvula como está.',
  'Isolate the valve and name it there: it goes on as its own job behind these locks. Named here, the valve goes back first.':
    'Aísle la válvula y nómbrela allí: sigue como trabajo propio tras esos candados. Nombrada aquí, la válvula vuelve antes.',
  'Name it, and the valve goes back. No procedure here makes it on this valve: it is planned.':
    'Nómbrela, y la válvula vuelve. Ningún procedimiento de aquí la hace en esta válvula: se planifica.',
  'no procedure here makes it on this valve: by its maker’s manual, planned':
    'ningún procedimiento de aquí la hace en esta válvula: por el manual del fabricante, planificada',
  'may go on at once as its own job': 'puede seguir enseguida como trabajo propio',
  'goes on as its own job once isolated': 'sigue como trabajo propio una vez aislada',
  because: 'porque',
  'kept, seen before': 'anotado, ya visto antes',
  '{1}, job {2} on {3}: the trouble is back': '{1}, trabajo {2} del {3}: el problema ha vuelto',
  'As told: {1}': 'Según el aviso: {1}',
  'Counted from job {1} on {2}: {3}. The trouble is back, which speaks against it, weakly. Correct the answer about the same trouble, and it counts no more.':
    'Se cuenta del trabajo {1} del {2}: {3}. El problema ha vuelto, lo que habla en contra, débilmente. Corrija la respuesta sobre el mismo problema, y ya no cuenta.',
  'It does not go on as that job.': 'No sigue como ese trabajo.',
  '{1} On its card, give the valve back instead.': '{1} En su tarjeta, devuelva la válvula en su lugar.',
  'It went on as': 'Siguió como el',
  ', with every lock where it hung.': ', con cada candado donde colgaba.',
  'Practise other work on this simulated valve': 'Practicar otro trabajo en esta válvula simulada',
} as const satisfies Catalogue;
