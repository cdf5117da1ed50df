import { procedureNamed } from '../../procedures/served.ts';
import { findTheFault } from '../../procedures/troubleshooting/find-the-fault.ts';
import { KeptList } from '../log/kept-list.ts';
import type { SiteLog } from '../log/site-log.ts';
import type { Valve } from '../valves/valve-stream.ts';
import type { BenchValve } from './bench-side.ts';

/** The valves of the plant that suit a search for a fault, in memory: their sheets say it, and there are many. */
export function benchValves(real: SiteLog): KeptList<BenchValve> {
  const whyNot = procedureNamed(findTheFault.id)?.whyNot;
  const slim = ({ sheet, retired }: Valve): BenchValve | null => {
    if (sheet === null || retired || whyNot?.(sheet, 'line')) return null;
    const { tag, service, location } = sheet;
    return { tag, service, words: `${tag} ${service} ${location}`.toLowerCase() };
  };
  return new KeptList({
    log: real,
    kind: 'valve',
    slim: ({ body }) => slim(body as unknown as Valve),
  });
}
