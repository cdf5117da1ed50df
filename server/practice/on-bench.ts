import type { Again, BareCall, RefusedCall, Route } from '../http/route.ts';
import { fingerprintOf } from '../log/chain.ts';
import { streamOf } from '../log/stream-kind.ts';
import type { Person } from '../people/person.ts';
import { personEntry, personKind } from '../people/person-stream.ts';
import { AT_BENCH, atBench } from './links.ts';

/**
 * A route of real work, served on the practice bench as well: the same handler on the bench's own database. It is
 * named anew, and in no menu.
 * @example onBench(showJob).path // '/practice/jobs/:id'
 */
export function onBench({ menu: _, ...route }: Route): Route {
  const { refused } = route;
  return {
    ...route,
    path: `${AT_BENCH}${route.path}`,
    name: `practise${route.name.charAt(0).toUpperCase()}${route.name.slice(1)}`,
    summary: `On the practice bench, with a simulated valve: ${route.summary.charAt(0).toLowerCase()}${route.summary.slice(1)}`,
    isPractice: true,
    run: async (call, typed) => {
      if (route.method === 'POST') await knowPerson(call, call.person);
      return moved(await route.run(call, typed));
    },
    ...(refused === undefined ? {} : { refused: async (call: RefusedCall) => moved(await refused(call)) }),
  };
}

/** Whoever is sent on stays on the bench. */
function moved<A extends Again>(reply: A): A {
  return reply.seeOther === undefined ? reply : { ...reply, seeOther: atBench(reply.seeOther) };
}

/** Signs the holds of the bench. No such person works at the site. */
export const BENCH_SUPERVISOR: Person = {
  id: 'bench',
  name: 'Supervisor of the practice bench',
  role: 'supervisor',
  retired: false,
};

/** The bench's log learns who works on it, with their role of today: locks and signatures ask for it there. */
export async function knowPerson(
  { services, screen }: Pick<BareCall, 'services' | 'screen'>,
  person: Person | null,
): Promise<void> {
  if (person === null) return;
  const { id, name, role } = person;
  const known = await services.log.state(personKind, id);
  if (known.role === role && known.name === name) return;
  await services.log.act({
    requestId: null,
    fingerprint: fingerprintOf({ knows: id, name, role }),
    person: null,
    screen,
    streams: [streamOf('person', id)],
    decide: () => ({
      entries: [personEntry(id, { kind: 'person-added', inputs: { name, role } })],
      answer: {},
    }),
  });
}
