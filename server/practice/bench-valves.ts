import { procedureNamed } from '../../procedures/served.ts';
import { findTheFault } from '../../procedures/troubleshooting/find-the-fault.ts';
import type { ValveSheet } from '../../procedures/valve-sheet/sheet.ts';
import { KeptList } from '../log/kept-list.ts';
import type { SiteLog } from '../log/site-log.ts';
import type { Valve } from '../valves/valve-stream.ts';
import type { BenchValve } from './bench-side.ts';

const POSITIONER = {
  none: 'no positioner',
  pneumatic: 'pneumatic positioner',
  electropneumatic: 'electropneumatic positioner',
} as const;

const RELAYS = { one: 'one relay', 'one an end': 'one relay an end' } as const;

/** What drives the valve, which decides what may be wrong with it. @example ['piston', 'no spring', 'pneumatic positioner', 'one relay'] */
function kindOf({
  actuatorKind,
  springHeldBy,
  positioner,
  positionerRelays,
}: Pick<ValveSheet, 'actuatorKind' | 'springHeldBy' | 'positioner' | 'positionerRelays'>): readonly string[] {
  const isPiston = actuatorKind === 'piston';
  const relays =
    isPiston && positioner !== 'none' && positionerRelays !== null ? [RELAYS[positionerRelays]] : [];
  return [
    actuatorKind,
    ...(isPiston ? [springHeldBy === 'no spring' ? 'no spring' : 'with a spring'] : []),
    POSITIONER[positioner],
    ...relays,
  ];
}

/** The valves of the plant that suit a search for a fault, in memory: their sheets say it, and there are many. */
export function benchValves(real: SiteLog): KeptList<BenchValve> {
  const whyNot = procedureNamed(findTheFault.id)?.whyNot;
  const slim = ({ sheet, retired }: Valve): BenchValve | null => {
    if (sheet === null || retired || whyNot?.(sheet, 'line')) return null;
    const { tag, service, location } = sheet;
    const kind = kindOf(sheet);
    return { tag, service, kind, words: [tag, service, location, ...kind].join(' ').toLowerCase() };
  };
  return new KeptList({
    log: real,
    kind: 'valve',
    slim: ({ body }) => slim(body as unknown as Valve),
  });
}
