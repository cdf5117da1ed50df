import { readSheet } from '../../../procedures/valve-sheet/read-sheet.ts';
import type { ValveSheet } from '../../../procedures/valve-sheet/sheet.ts';
import { DEMO_VALVES } from '../../../server/demo/demo-valves.ts';

/** A sheet of the demo plant. */
export function demoSheet(tag: string): ValveSheet {
  const texts = DEMO_VALVES.find((one) => one.tag === tag);
  if (texts === undefined) throw new Error(`no ${tag} in the demo plant`);
  const read = readSheet({ texts });
  if (!read.ok) throw new Error(`the sheet of ${tag} cannot be read`);
  return read.sheet;
}

/** One of each kind of valve that the demo plant has, and the two kinds that it has not. */
export function valveKinds(): Readonly<Record<string, ValveSheet>> {
  const piston = demoSheet('FV-202');
  return {
    'a diaphragm straight on its transducer, air opens': demoSheet('FV-214'),
    'a diaphragm straight on its transducer, air shuts': demoSheet('FV-102'),
    'a diaphragm with a pneumatic positioner': demoSheet('LV-201'),
    'a diaphragm with an electric positioner': demoSheet('PV-121'),
    'a cylinder with a relay an end': piston,
    'a cylinder with one relay': { ...piston, positionerRelays: 'one' },
  };
}

/** Kinds that the tables of the troubleshooting were not bettered on: the same sheets built the other way round. */
export function furtherKinds(): Readonly<Record<string, ValveSheet>> {
  const [bare, positioner, piston] = [demoSheet('FV-214'), demoSheet('LV-201'), demoSheet('FV-202')];
  const otherWay = ({ flow }: ValveSheet) => (flow === 'over' ? ('under' as const) : ('over' as const));
  return {
    'a diaphragm straight on its transducer, flow the other way': { ...bare, flow: otherWay(bare) },
    'a diaphragm with a pneumatic positioner, its plug shutting the other way': {
      ...positioner,
      plugCloses: positioner.plugCloses === 'down' ? 'up' : 'down',
    },
    'a cylinder with one relay, loaded at its other end, flow the other way': {
      ...piston,
      flow: otherWay(piston),
      positionerRelays: 'one',
      positionerRisingSignalLoads: piston.positionerRisingSignalLoads === 'top' ? 'bottom' : 'top',
    },
  };
}
